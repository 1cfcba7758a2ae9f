import { describe, expect, it } from 'vitest';
import type { Phase, Scenario } from '../../../engine/scenario/schema.ts';
import type { StintResult } from '../../../engine/stint/result.ts';
import { changed, corner, driven, withPhases } from '../../support/stints.ts';

const push = (more: Partial<Phase> = {}): Phase => ({ kind: 'push', laps: 4, ...more }) as Phase;
const stint = (...phases: Phase[]): Scenario => withPhases(phases, 8);
const base = stint(push(), push());

/** Another stint under the speed and heat of the base. */
const under = (scenario: Scenario): StintResult =>
  driven(changed({ 'stint.hold_trace': true }, scenario), { driven: base });

describe('a held trace', () => {
  const plain = driven(base);
  const peak = (result: StintResult): number => corner(result, 'front').laps[7]!.faceMax_K;

  it.each([
    { gap_m: 6 },
    { set: { 'driver.coast_s': 1 } },
    { set: { 'car.fuel_kg': 5 } },
    { set: { 'car.brake_balance_front': 0.5 } },
  ])('keeps speed and heat whatever a phase changes: %j', (more) => {
    const result = under(stint(push(), push(more)));
    expect(result.clock).toEqual(plain.clock);
    expect(corner(result, 'front').ledger_J.brakeHeat).toBe(corner(plain, 'front').ledger_J.brakeHeat);
  });

  it('changes the air and the tape of a phase', () => {
    expect(peak(under(stint(push(), push({ gap_m: 6 }))))).toBeGreaterThan(peak(plain) + 5);
    expect(peak(under(stint(push(), push({ set: { 'blanking_pct.front': 20 } }))))).toBeLessThan(
      peak(plain) - 20,
    );
  });

  it('drives the new laps as the base would, where the laps are cut another way', () => {
    const result = under(stint(push({ laps: 3 }), { kind: 'safety', laps: 5 }));
    expect(result.laps.map(({ kind }) => kind).filter((kind) => kind === 'safety')).toHaveLength(5);
    expect(result.lapTime_s).toBeCloseTo(plain.lapTime_s, 1);
  });
});
