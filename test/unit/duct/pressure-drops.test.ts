import { describe, expect, it } from 'vitest';
import { solveAirPath } from '../../../engine/duct/network.ts';
import { pressureDrops } from '../../../engine/duct/pressure-drops.ts';
import { heavyFront, rolling } from './corners.ts';

function dropsAt(openFraction: number) {
  const state = { ...rolling(180), openFraction };
  return pressureDrops(heavyFront, state, solveAirPath(heavyFront, state));
}

describe('pressure drops along the duct', () => {
  it('are larger in a short flattened part than in as much round hose', () => {
    const state = rolling(180);
    const pinched = { ...heavyFront, pinch: { flattened: 0.4, length_m: 0.2 } };
    const drops = pressureDrops(pinched, state, solveAirPath(pinched, state));
    expect(drops.flattened_Pa).toBeGreaterThan(3 * (0.2 / 1.1) * drops.friction_Pa);
    expect(dropsAt(1).flattened_Pa).toBe(0);
    const { ram_Pa, ...parts } = drops;
    expect(Object.values(parts).reduce((sum, part) => sum + part, 0)).toBeCloseTo(ram_Pa, 8);
  });

  it('add up to the ram pressure', () => {
    for (const open of [1, 0.4, 0]) {
      const { ram_Pa, ...parts } = dropsAt(open);
      expect(Object.values(parts).reduce((sum, part) => sum + part, 0)).toBeCloseTo(ram_Pa, 8);
    }
  });

  it('give the mouth its own loss coefficient on its own area', () => {
    const state = { ...rolling(180), openFraction: 0.5 };
    const flows = solveAirPath(heavyFront, state);
    const { mouth_Pa } = pressureDrops(heavyFront, state, flows);
    const mouth_mps = flows.duct_kgps / state.density_kgpm3 / heavyFront.mouthArea_m2;
    expect(mouth_Pa / (0.5 * state.density_kgpm3 * mouth_mps ** 2)).toBeCloseTo(5.8274, 3);
  });

  it('put everything in the mouth when it is shut', () => {
    const { friction_Pa, exit_Pa, mouth_Pa, plenum_Pa, ram_Pa } = dropsAt(0);
    expect([friction_Pa, exit_Pa]).toEqual([0, 0]);
    expect(mouth_Pa).toBeCloseTo(0.85 * ram_Pa - plenum_Pa, 8);
  });
});
