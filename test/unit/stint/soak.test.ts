import { describe, expect, it } from 'vitest';
import { defaultScenario, shippedStint } from '../../../engine/scenario/library.ts';
import type { Phase } from '../../../engine/scenario/schema.ts';
import type { Axle, Soak, StintResult } from '../../../engine/stint/result.ts';
import { kelvin } from '../../../engine/units.ts';
import { corner, driven, withPhases } from '../../support/stints.ts';

/** The same from the columns, by time alone: the stand lasts from one moment to the other. */
function fromColumns(result: StintResult, axle: Axle, from_s: number, to_s: number) {
  const { time_s } = result.clock;
  const { caliper_K, fluid_K, cheek_K } = corner(result, axle).columns!;
  const rows = [...time_s.keys()].filter((i) => time_s[i]! >= from_s - 1e-6 && time_s[i]! <= to_s + 1e-6);
  const peak = (column: Float64Array) => {
    const top = rows.reduce((a, b) => (column[b]! > column[a]! ? b : a));
    return {
      start_K: column[rows[0]!]!,
      peak_K: column[top]!,
      peakAfter_s: time_s[top]! - time_s[rows[0]!]!,
    };
  };
  return {
    caliper: peak(caliper_K),
    fluid: peak(fluid_K),
    discStart_K: cheek_K[rows[0]!]!,
    discEnd_K: cheek_K[rows.at(-1)!]!,
  };
}

describe.each(['sorrelby-20', 'restart'])('after the last lap of %s', (id) => {
  const scenario = shippedStint(id);
  const result = driven(scenario);

  it.each(['front', 'rear'] as const)('the %s agrees with the columns', (axle) => {
    const soak = corner(result, axle).soak!;
    const last = result.laps.at(-1)!;
    expect(soak).toMatchObject(fromColumns(result, axle, last.end_s, result.clock.time_s.at(-1)!));
    expect(soak).toMatchObject({ lap: last.lap, brakeHeld: false });
    expect(soak.standing_s).toBeCloseTo(600, 6);
    expect(soak.caliper.rise_K).toBeCloseTo(soak.caliper.peak_K - soak.caliper.start_K, 9);
  });

  it('what is left to the limits is told', () => {
    const { caliperMargin_K, fluidMargin_K, caliper, fluid } = corner(result, 'front').soak!;
    expect(caliperMargin_K).toBeCloseTo(kelvin(200) - caliper.peak_K, 9);
    expect(fluidMargin_K).toBeCloseTo(kelvin(180) - fluid.peak_K, 9);
  });
});

const push = (laps: number): Phase => ({ kind: 'push', laps });
const stand = (duration_s: number, brake_held = false): Phase => ({ kind: 'stand', duration_s, brake_held });
const front = (phases: Phase[], laps: number) => corner(driven(withPhases(phases, laps)), 'front');

describe('a soak', () => {
  it('is null when the stint does not end standing', () => {
    expect(front([push(3)], 3)).toMatchObject({ soak: null, stopSoaks: [] });
    expect(front([push(2), stand(300), push(1)], 3).soak).toBeNull();
  });

  it('is told of a stop between laps when it lasts more than a minute', () => {
    const { stopSoaks, soak } = front([push(4), stand(60), push(2), stand(61), push(2), stand(30)], 8);
    expect(stopSoaks.map(({ lap, standing_s }) => [lap, Math.round(standing_s)])).toEqual([[6, 61]]);
    expect(soak).toMatchObject({ lap: 8, discFirstMinute_K: null });
  });

  it('takes standing phases that follow each other as one, held if one of them is', () => {
    const { soak } = front([push(4), stand(50), stand(50, true)], 4);
    expect(soak).toMatchObject({ lap: 4, brakeHeld: true });
    expect(soak!.standing_s).toBeCloseTo(100, 6);
  });

  it('does not count a car that stands before its first lap', () => {
    expect(front([stand(300), push(2)], 2)).toMatchObject({ soak: null, stopSoaks: [] });
  });

  it('is fiercer without a cool lap, and fiercer still with the brake held', () => {
    const soaks = [
      [push(8), { kind: 'in', laps: 1 } as Phase, stand(900)],
      [push(9), stand(900)],
    ].map((phases) => front(phases, 9).soak!) as [Soak, Soak];
    const held = front([push(9), stand(900, true)], 9).soak!;
    const rises = [...soaks, held].map(({ caliper }) => caliper.rise_K);
    expect([...rises].sort((a, b) => a - b)).toEqual(rises);
  });

  it('loses a disc its heat in the first minute by what its column says', () => {
    const result = driven(withPhases([push(6), stand(300)], 6, defaultScenario()));
    const { discFirstMinute_K, discStart_K } = corner(result, 'front').soak!;
    const { time_s } = result.clock;
    const column = corner(result, 'front').columns!.cheek_K;
    const minute = time_s.findIndex((t) => t >= result.laps.at(-1)!.end_s + 60);
    const [before, after] = [discStart_K - column[minute - 1]!, discStart_K - column[minute]!];
    expect(discFirstMinute_K!).toBeGreaterThan(before - 1e-9);
    expect(discFirstMinute_K!).toBeLessThanOrEqual(after + 1e-9);
  });
});
