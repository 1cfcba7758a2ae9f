import { describe, expect, it } from 'vitest';
import { textOf } from '../../support/tree.ts';
import { parseData } from '../gate.ts';
import { engineRun, timeText } from './engine-trace.ts';
import { differences, fingerprintOf, type Fingerprint } from './fingerprint.ts';
import { referenceStints } from './stints.ts';

const folder = 'test/validation/whole-stint';
const made = JSON.parse(textOf(`${folder}/made-with.json`)) as Fingerprint;
const again = 'run "npm run reference", then "npm run validate"';

describe('the stints that are solved a second time', () => {
  it('were solved with the equations, scenarios and driving of today', () => {
    const moved = differences(fingerprintOf(referenceStints()), made);
    expect(moved.slice(0, 3), `${moved.length} numbers moved since: ${again}`).toEqual([]);
  });

  it('are told at the samples that the engine takes today', () => {
    const moments = parseData(textOf(`${folder}/data.csv`)).filter(({ t = NaN }) => !Number.isNaN(t));
    const missed = moments.filter(({ stint = NaN, t = NaN }) => !engineRun(stint).sampleAt.has(timeText(t)));
    expect(
      missed.slice(0, 3),
      `the engine's steps moved, ${missed.length} samples are gone: ${again}`,
    ).toEqual([]);
    expect(moments.length).toBeGreaterThan(4000);
  });

  it('would not pass for others: a pad that drags more, a lap that is driven slower', () => {
    const [first] = referenceStints();
    const { scenario } = first!;
    const { front } = scenario.brakes;
    const drags = { ...front, pad: { ...front.pad, drag_N: front.pad.drag_N + 1 } };
    const changes = [
      { ...scenario, brakes: { ...scenario.brakes, front: drags } },
      { ...scenario, driver: { ...scenario.driver, coast_s: scenario.driver.coast_s + 0.01 } },
    ];
    for (const other of changes) {
      const moved = differences(fingerprintOf([{ ...first!, scenario: other }]), fingerprintOf([first!]));
      expect(moved).not.toEqual([]);
    }
  });
});
