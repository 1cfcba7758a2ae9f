import { describe, expect, it } from 'vitest';
import { compile } from '../../../engine/stint/compile.ts';
import type { Phase, Scenario } from '../../../engine/scenario/schema.ts';
import { mpsFromKmh } from '../../../engine/units.ts';
import { changed, corner, driven, withPhases } from '../../support/stints.ts';

const LONG = 10;

/** Ten push laps, then ten that the change holds for. */
const stint = (first: object, then: object, base?: Scenario): Scenario => {
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

describe('tape that comes off or goes on in mid-stint (common practice, no source)', () => {
  it.each([
    [70, 30],
    [70, 50],
    [30, 70],
    [0, 50],
  ])('from %i to %i %% shows half its effect after one lap, all of it after three or four', (from, to) => {
    const base = changed({ 'blanking_pct.front': from });
    const effect = apart(stint({}, { set: { 'blanking_pct.front': to } }, base), stint({}, {}, base));
    const share = (laps: number): number => effect(laps) / effect(LONG);
    expect(effect(0)).toBe(0);
    expect(Math.sign(effect(LONG))).toBe(Math.sign(to - from));
    expect(share(1)).toBeGreaterThan(0.4);
    expect(share(1)).toBeLessThan(0.65);
    expect(share(3)).toBeGreaterThan(0.85);
    expect(share(4)).toBeGreaterThan(0.93);
  });
});

describe('the heat of a car ahead (common practice, no source)', () => {
  it.each([{ gap_m: 8 }, { gap_s: 0.5 }])(
    'is gone two laps after clear air, but for what laps differ by of themselves: %j',
    (gap) => {
      const excess = apart(stint(gap, {}), stint({}, {}));
      expect(excess(0)).toBeGreaterThan(15);
      // 15 K of 57 behind 8 m: practice calls that gone; a clock of the disc's own says a quarter
      expect(excess(2)).toBeLessThan(20);
      expect(excess(2) / excess(0)).toBeLessThan(0.3);
      expect(excess(4)).toBeLessThan(5);
    },
  );
});

describe('spray (common practice, no source)', () => {
  it('takes 0.5 to 2.6 kW from a hot front disc at 170 km/h, from light rain to the heaviest', () => {
    const scenario = (g: number): Scenario =>
      changed({ 'conditions.wet': true, 'conditions.spray_g_per_m3': g });
    const taken_W = (spray: number): number => {
      const { sprayFace_W, sprayVane_W, speedStep_mps } = compile(scenario(spray)).corners[0]!.maps[0]!;
      const i = Math.round(mpsFromKmh(170) / speedStep_mps);
      return sprayFace_W[i]! + sprayVane_W[i]!;
    };
    expect(taken_W(1)).toBeGreaterThan(500);
    expect(taken_W(5)).toBeLessThan(2600);
  });
});
