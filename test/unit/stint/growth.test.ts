import { describe, expect, it } from 'vitest';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { withChanges } from '../../../engine/scenario/changes.ts';
import { compile } from '../../../engine/stint/compile.ts';
import { apart } from '../../bench/apart.ts';
import type { Held } from '../../support/session-child.ts';

const stepsOf = (laps: number): number =>
  compile(withChanges(defaultScenario(), { 'stint.laps': laps })).samples;

describe('a longer stint and a longer session', () => {
  it('take no more steps for 80 laps than 4.2 times those of 20, and nearly four times as many', () => {
    const ratio = stepsOf(80) / stepsOf(20);
    expect(ratio).toBeLessThan(4.2);
    expect(ratio).toBeGreaterThan(3.5);
  });

  it('hold no more memory after each run', async () => {
    const { runs, bytes } = await apart<Held>('../support/session-child.ts', ['--expose-gc']);
    const [, second = NaN, third = NaN] = bytes;
    // what is compiled by the way moves it by a tenth of this; one column of this stint kept would be twice as much
    expect((third - second) / runs).toBeLessThan(2000);
  }, 120_000);
});
