import { describe, expect, it, vi } from 'vitest';
import type { Scenario } from '../../engine/scenario/schema.ts';
import { bytesOf, deepFreeze, shipped } from '../support/shipped.ts';
import { changed, driven, held } from '../support/stints.ts';

/** The engine with nothing remembered, as a fresh process has it. */
async function freshRun(scenario: Scenario): Promise<string> {
  vi.resetModules();
  const { compile } = await import('../../engine/stint/compile.ts');
  const { run } = await import('../../engine/stint/run.ts');
  return bytesOf(run(compile(scenario)));
}

describe('the same scenario gives the same bytes', () => {
  it.each(shipped)('twice in a row: %s', (_, scenario) => {
    expect(bytesOf(driven(scenario)) === bytesOf(driven(scenario))).toBe(true);
  });

  it.each(shipped)('in a fresh engine and in one that has run other stints: %s', async (_, scenario) => {
    for (const [, other] of shipped) driven(other);
    held({ 'blanking_pct.front': 20, 'conditions.altitude_m': 900 }, scenario);
    driven(changed({ 'traffic.gap_m': 12, 'car.fuel_kg': 20, 'stint.in_lap_pace': 0.5 }, scenario));
    const warm = bytesOf(driven(scenario));
    expect(warm === (await freshRun(scenario))).toBe(true);
  });

  it('after a change and back again', () => {
    const [, scenario] = shipped[0]!;
    const first = bytesOf(driven(scenario));
    driven(changed({ 'conditions.wet': true, 'blanking_pct.rear': 0 }, scenario));
    expect(bytesOf(driven(scenario)) === first).toBe(true);
  });

  it.each(shipped)('and a run changes nothing in %s', (_, scenario) => {
    const frozen = deepFreeze(structuredClone(scenario));
    expect(() => driven(frozen)).not.toThrow();
    expect(() => held({ 'blanking_pct.front': 10 }, frozen)).not.toThrow();
  });
});
