import fc from 'fast-check';
import { expect, it } from 'vitest';
import { fieldAt } from '../../engine/scenario/keys.ts';
import type { Changes } from '../../engine/scenario/override.ts';
import { unexplained } from '../support/ledger.ts';
import { changed, driven } from '../support/stints.ts';

const within = (key: string): fc.Arbitrary<number> => {
  const { min = 0, max = 0 } = fieldAt(key)!;
  return fc.oneof(fc.double({ min, max, noNaN: true }), fc.constantFrom(min, max));
};

/** Any place of any slider. */
const sliders: fc.Arbitrary<Changes> = fc.record({
  'conditions.ambient_C': within('conditions.ambient_C'),
  'conditions.altitude_m': within('conditions.altitude_m'),
  'conditions.humidity_pct': within('conditions.humidity_pct'),
  'conditions.wet': fc.boolean(),
  'conditions.spray_g_per_m3': within('conditions.spray_g_per_m3'),
  'blanking_pct.front': within('blanking_pct.front'),
  'blanking_pct.rear': within('blanking_pct.rear'),
  'traffic.gap_m': fc.option(within('traffic.gap_m')),
  'stint.laps': fc.integer({ min: 2, max: 40 }),
});

it('wherever the sliders stand, a stint runs, all of it is finite, and the books close', () => {
  fc.assert(
    fc.property(sliders, (changes) => {
      const { clock, corners, lapTime_s, brakeEnergyPerLap_J } = driven(changed(changes));
      expect([lapTime_s, brakeEnergyPerLap_J].every(Number.isFinite)).toBe(true);
      expect(clock.time_s.every(Number.isFinite)).toBe(true);
      for (const { columns, laps, ledger_J } of corners) {
        const temperatures = Object.values(columns!) as Float64Array[];
        expect(temperatures.every((column) => column.every((T) => Number.isFinite(T) && T > 200))).toBe(true);
        expect(laps.every(({ faceMax_K, faceMean_K }) => faceMax_K >= faceMean_K)).toBe(true);
        expect(unexplained(ledger_J)).toBeLessThanOrEqual(1e-9);
      }
    }),
    { numRuns: 25, seed: 20 },
  );
});
