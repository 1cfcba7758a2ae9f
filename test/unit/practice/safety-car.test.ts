import { describe, expect, it } from 'vitest';
import type { Phase } from '../../../engine/scenario/schema.ts';
import { celsius } from '../../../engine/units.ts';
import { changed, corner, driven, withPhases } from '../../support/stints.ts';
import { expectWithin, heavy, light, type TradeCar } from '../../support/trade.ts';

/** Laps at pace, some behind a safety car, and back to pace. */
function restarted({ base }: TradeCar, slow: number, kmh: number) {
  const phases: Phase[] = [
    { kind: 'out', laps: 1 },
    { kind: 'push', laps: 9 },
    { kind: 'safety', laps: slow },
    { kind: 'push', laps: null },
    { kind: 'in', laps: 1 },
  ];
  const half = changed({ 'blanking_pct.front': 50, 'stint.safety_car_kmh': kmh }, base);
  const result = driven(withPhases(phases, 18 + slow, half));
  const { laps, stops, columns } = corner(result, 'front');
  const restart = 10 + slow;
  const hard = stops.filter((stop) => stop.hard && stop.lap > 1);
  return {
    disc_C: celsius(columns!.cheek_K[result.laps[restart - 1]!.lastSample]!),
    coldest: hard.reduce((a, b) => (b.startFace_K < a.startFace_K ? b : a)),
    firstHard: hard.find(({ lap }) => lap === restart + 1),
    /** What the peak of each lap lacks to the last one before [K] */
    short_K: [0, 1, 2, 3].map((i) => laps[9]!.faceMax_K - laps[restart + i]!.faceMax_K),
  };
}

// 150 km/h is three quarters of the heavy car's mean speed, and nearly all of the light one's, which laps at 160: its safety
// car drives three quarters of that.
const cases = [heavy, light].flatMap((car) =>
  [2, 3].map((slow) => ({ name: car.name, slow, ...restarted(car, slow, car === heavy ? 150 : 120) })),
);

describe.each(cases)(
  '$slow laps behind a safety car, $name car (common practice, no source)',
  ({ name, disc_C, coldest, firstHard, short_K }) => {
    it('leave the disc cold', () => expectWithin(disc_C, [115, 230]));

    it('make the first hard stop after them the coldest of the stint', () => {
      expect(coldest).toBe(firstHard);
    });

    // The light car runs a warmer bulk under the same peak (a smaller swing) and has further to come back: it lacks 10 K more
    // after three laps, and is there on the fourth.
    it('are made up for in three laps and not in two', () => {
      expect(short_K[1]).toBeGreaterThan(40);
      expect(short_K[2]).toBeLessThan(name === 'heavy' ? 40 : 50);
      expect(short_K[3]).toBeLessThan(40);
    });

    it('are made up for by halves, lap after lap', () => {
      for (const i of [1, 2]) expectWithin(short_K[i]! / short_K[i - 1]!, [0.4, 0.6]);
    });
  },
);
