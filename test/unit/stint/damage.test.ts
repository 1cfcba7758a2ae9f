import { describe, expect, it } from 'vitest';
import { defaultScenario, shippedStint, withCircuit } from '../../../engine/scenario/library.ts';
import type { Scenario } from '../../../engine/scenario/schema.ts';
import type { CornerResult, StintResult } from '../../../engine/stint/result.ts';
import { changed, corner, driven, withPhases } from '../../support/stints.ts';

/** Face over vane wall at each sample between two moments. */
function differences(result: StintResult, { columns }: CornerResult, from_s: number, to_s: number): number[] {
  const { time_s } = result.clock;
  const { face_K, wall_K } = columns!;
  const rows = [...time_s.keys()].filter((i) => time_s[i]! >= from_s - 1e-6 && time_s[i]! <= to_s + 1e-6);
  return rows.map((i) => face_K[i]! - wall_K[i]!);
}

/** Time in which a column, straight between samples, is above a limit: by a thousand points in a step that passes it. */
function timeAbove(time_s: Float64Array, column: Float64Array, limit: number, [from, to]: [number, number]) {
  let sum = 0;
  for (let i = from + 1; i <= to; i++) {
    const [a, b] = [column[i - 1]!, column[i]!];
    const parts = Math.min(a, b) > limit || Math.max(a, b) <= limit ? 1 : 1000;
    const points = Array.from({ length: parts }, (_, k) => a + ((k + 0.5) / parts) * (b - a));
    sum += (points.filter((value) => value > limit).length / parts) * (time_s[i]! - time_s[i - 1]!);
  }
  return sum;
}

const stints: [string, Scenario][] = [
  ['the default stint', defaultScenario()],
  ['the long circuit', withCircuit(defaultScenario(), 'long')],
  ['a night that turns to rain', shippedStint('night-rain')],
  ['the light car with its solid rear disc', shippedStint('club-evening')],
];

describe.each(stints)('over %s', (_, scenario) => {
  const result = driven(scenario);

  it.each(['front', 'rear'] as const)('the largest differences of the %s agree with its columns', (axle) => {
    const one = corner(result, axle);
    for (const stop of one.stops) {
      const top = Math.max(...differences(result, one, stop.start_s, stop.end_s));
      expect(stop.largestDifference_K).toBeGreaterThanOrEqual(top);
      expect(stop.largestDifference_K).toBeLessThan(top + 5);
    }
    const { damage, stops, laps } = one;
    const worst = Math.max(...laps.map((lap) => lap.largestDifference_K));
    expect(damage.largestDifference_K).toBe(worst);
    const there = stops.find((stop) => stop.lap === damage.lap && stop.place === damage.place)!;
    expect(there.largestDifference_K).toBe(worst);
    const harsh = stops.filter((stop) => stop.largestDifference_K > 200).length;
    expect(damage).toMatchObject({ stopsAbove200: harsh, stops: stops.length });
  });

  it.each(['front', 'rear'] as const)(
    'the times of the %s past its limits agree with its columns',
    (axle) => {
      const { damage, columns, window, stops } = corner(result, axle);
      const { time_s } = result.clock;
      const judged = result.laps.filter((_lap, i) => corner(result, axle).laps[i]!.in !== null);
      const sum = (column: Float64Array, limit: number): number =>
        judged.reduce(
          (total, lap) => total + timeAbove(time_s, column, limit, [lap.firstSample, lap.lastSample]),
          0,
        );
      expect(damage.aboveFacePeak_s).toBeCloseTo(sum(columns!.face_K, window.facePeak_K), 1);
      expect(damage.aboveBulk_s).toBeCloseTo(sum(columns!.cheek_K, window.bulk_K), 1);
      const braked = stops.filter((stop) => judged.some(({ lap }) => lap === stop.lap));
      const at = (s: number): number => time_s.findIndex((t) => t >= s - 1e-9);
      const below = braked.reduce((total, { start_s, end_s }) => {
        const above = timeAbove(time_s, columns!.face_K, window.bite_K, [at(start_s), at(end_s)]);
        return total + (end_s - start_s) - above;
      }, 0);
      expect(damage.belowBite_s).toBeCloseTo(below, 1);
    },
  );
});

const front = (scenario: Scenario): CornerResult => corner(driven(scenario), 'front');

describe('damage', () => {
  it('counts the stops above 200 K only: some of those of the heavy car on the long circuit', () => {
    const { damage, stops } = front(withCircuit(defaultScenario(), 'long'));
    expect(damage.stopsAbove200).toBeGreaterThan(0);
    expect(damage.stopsAbove200).toBeLessThan(stops.length);
  });

  it('is of all laps where none counts', () => {
    const cold = front(withPhases([{ kind: 'out', laps: 2 }], 2));
    expect(cold.verdict.countedLaps).toBe(0);
    expect(cold.damage.belowBite_s).toBeGreaterThan(1);
    expect(cold.damage.largestDifference_K).toBeGreaterThan(20);
  });

  it('is less with earlier, softer braking', () => {
    const usual = front(defaultScenario()).damage.largestDifference_K;
    const soft = changed({ 'driver.grip_share_braking_dry': 0.6 });
    expect(front(soft).damage.largestDifference_K).toBeLessThan(usual - 10);
  });
});
