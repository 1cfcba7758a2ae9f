import { describe, expect, it } from 'vitest';
import type { Phase, Scenario } from '../../../engine/scenario/schema.ts';
import { changed, corner, driven, withPhases } from '../../support/stints.ts';
import { bothCars, expectWithin } from '../../support/trade.ts';

const LONG = 10;

/** Ten push laps, then ten that the change holds for. */
const stint = (first: object, then: object, base: Scenario): Scenario => {
  const phases = [
    { kind: 'out', laps: 1 },
    { kind: 'push', laps: LONG, ...first },
    { kind: 'push', laps: LONG, ...then },
  ];
  return withPhases(phases as Phase[], 1 + 2 * LONG, base);
};

/** Bulk of the front each time the car crosses the line, from the first lap's end on. */
function bulkAtLine(scenario: Scenario): number[] {
  const result = driven(scenario);
  return result.laps.map(({ lastSample }) => corner(result, 'front').columns!.cheek_K[lastSample]!);
}

/** What one stint has over another, after so many laps since the change. */
const apart = (one: Scenario, other: Scenario): ((laps: number) => number) => {
  const [a, b] = [bulkAtLine(one), bulkAtLine(other)];
  return (laps) => a[LONG + laps]! - b[LONG + laps]!;
};

describe.each(bothCars)('settling, $name car (common practice, no source)', ({ base, result, front }) => {
  it('is done within 10 K by the fifth push lap', () => {
    const settling = corner(result, 'front').laps.filter(({ kind }) => kind === 'push');
    expect(Math.abs(settling[4]!.faceMean_K - front.faceMean_K)).toBeLessThan(10);
    expect(front.faceMean_K - settling[0]!.faceMean_K).toBeGreaterThan(35);
  });

  it('has a time constant of two to four minutes', () => {
    const warmer = { set: { 'conditions.ambient_C': base.conditions.ambient_C + 10 } };
    const effect = apart(stint({}, warmer, base), stint({}, {}, base));
    const left = 1 - effect(2) / effect(LONG);
    expectWithin((-2 * result.lapTime_s) / Math.log(left) / 60, [2, 4]);
  });
});

describe.each(bothCars)(
  'tape that comes off or goes on in mid-stint, $name car (common practice, no source)',
  ({ base: shipped }) => {
    it.each([
      [70, 30],
      [70, 50],
      [30, 70],
      [0, 50],
    ])(
      'from %i to %i percent shows half its effect after one lap, all of it after three or four',
      (from, to) => {
        const base = changed({ 'blanking_pct.front': from }, shipped);
        const effect = apart(stint({}, { set: { 'blanking_pct.front': to } }, base), stint({}, {}, base));
        const share = (laps: number): number => effect(laps) / effect(LONG);
        expect(effect(0)).toBe(0);
        expect(Math.sign(effect(LONG))).toBe(Math.sign(to - from));
        expect(share(1)).toBeGreaterThan(0.4);
        expect(share(1)).toBeLessThan(0.65);
        expect(share(3)).toBeGreaterThan(0.85);
        expect(share(4)).toBeGreaterThan(0.93);
      },
    );
  },
);

describe.each(bothCars)('the heat of a car ahead, $name car (common practice, no source)', ({ base }) => {
  it.each([{ gap_m: 8 }, { gap_s: 0.5 }])(
    'is gone two laps after clear air, but for what laps differ by of themselves: %j',
    (gap) => {
      const excess = apart(stint(gap, {}, base), stint({}, {}, base));
      expect(excess(0)).toBeGreaterThan(15);
      // 15 K of 57 behind 8 m: practice calls that gone; a clock of the disc's own says a quarter
      expect(excess(2)).toBeLessThan(20);
      expect(excess(2) / excess(0)).toBeLessThan(0.3);
      expect(excess(4)).toBeLessThan(5);
    },
  );
});
