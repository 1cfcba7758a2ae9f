import { describe, expect, it } from 'vitest';
import { airPathMap } from '../../../engine/duct/air-path-map.ts';
import { solveAirPath } from '../../../engine/duct/network.ts';
import { heavyFront, HEAVY_WHEEL_M, noDuct, rolling, solidDisc } from './corners.ts';

const speeds_mps = [0, 0.5, 5, 20, 50, 90];
const conditions = { openFraction: 0.3, density_kgpm3: 1.184, qRatio: 0.8, wheelhouseDensity_kgpm3: 1.05 };

describe('the flow map of a corner', () => {
  it.each([
    ['a vented disc', heavyFront],
    ['no duct', noDuct],
    ['a solid disc', solidDisc],
  ])('of %s agrees with a solution at each speed', (_, geometry) => {
    const map = airPathMap(geometry, speeds_mps, { ...conditions, wheelRadius_m: HEAVY_WHEEL_M });
    speeds_mps.forEach((speed_mps, i) => {
      const wheel_radps = speed_mps / HEAVY_WHEEL_M;
      const flows = solveAirPath(geometry, { ...rolling(0), ...conditions, speed_mps, wheel_radps });
      expect(map.duct_kgps[i]).toBeCloseTo(flows.duct_kgps, 10);
      expect(map.vane_kgps[i]).toBeCloseTo(flows.vane_kgps, 10);
      expect(map.leak_kgps[i]).toBeCloseTo(flows.leak_kgps, 10);
      expect(map.plenum_Pa[i]).toBeCloseTo(flows.plenum_Pa, 6);
    });
  });

  it('is 0 throughout at speed 0', () => {
    const map = airPathMap(heavyFront, [0], { ...conditions, wheelRadius_m: HEAVY_WHEEL_M });
    expect([map.duct_kgps, map.vane_kgps, map.plenum_Pa].map(([first = NaN]) => Math.abs(first))).toEqual([
      0, 0, 0,
    ]);
  });
});
