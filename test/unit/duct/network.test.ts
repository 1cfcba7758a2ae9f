import { describe, expect, it } from 'vitest';
import { solveAirPath } from '../../../engine/duct/network.ts';
import { heavyFront, noDuct, rolling, solidDisc } from './corners.ts';

const shutState = { ...rolling(180), openFraction: 0 };

describe('the air path of a corner', () => {
  it('loses no air', () => {
    for (const geometry of [heavyFront, noDuct, solidDisc]) {
      const { duct_kgps, vane_kgps, leak_kgps } = solveAirPath(geometry, rolling(180));
      expect(vane_kgps + leak_kgps).toBeCloseTo(duct_kgps, 14);
    }
  });

  it('passes nothing through a shut mouth, and the vanes then draw through the leak', () => {
    const flows = solveAirPath(heavyFront, shutState);
    expect(flows.duct_kgps).toBe(0);
    expect(flows.vane_kgps).toBeGreaterThan(0.005);
    expect(flows.leak_kgps).toBe(-flows.vane_kgps);
  });

  it('without a duct behaves as with its mouth shut', () => {
    expect(solveAirPath(noDuct, rolling(180))).toEqual(solveAirPath(heavyFront, shutState));
  });

  it('with a solid disc lets the duct air out through the leak', () => {
    const flows = solveAirPath(solidDisc, rolling(180));
    expect(flows.vane_kgps).toBe(0);
    expect(flows.duct_kgps).toBeGreaterThan(0.01);
    expect(flows.leak_kgps).toBe(flows.duct_kgps);
  });

  it('is still when the car stands', () => {
    const stopped = { ...rolling(0), wheel_radps: 0 };
    for (const geometry of [heavyFront, noDuct, solidDisc, { ...noDuct, vanes: null }]) {
      expect(Object.values(solveAirPath(geometry, stopped)).map(Math.abs)).toEqual([0, 0, 0, 0]);
    }
  });

  it('pulls air through the duct by the vanes alone when the wheel turns on a stand', () => {
    const { duct_kgps, vane_kgps } = solveAirPath(heavyFront, { ...rolling(0), wheel_radps: 100 });
    expect(vane_kgps).toBeGreaterThan(0);
    expect(duct_kgps).toBeGreaterThan(0);
  });

  it('draws from the wheelhouse to the exit, each at its own pressure and the wheelhouse air at its own density', () => {
    const path = { ...noDuct, wheelhouseCp: -0.05, exitCp: -0.35 };
    const state = { ...rolling(180), wheel_radps: 0, wheelhouseDensity_kgpm3: 0.9 };
    // Two openings in series under 0.3 q: A²/K of each, by the density of the air that comes into it.
    const gap = (0.9 * path.leakArea_m2 ** 2) / path.leakLoss;
    const vanes = (1.184 * path.vanes!.flowArea_m2 ** 2) / path.vanes!.loss;
    const expected_kgps = Math.sqrt((2 * 0.3 * 0.5 * 1.184 * 50 ** 2) / (1 / gap + 1 / vanes));
    expect(solveAirPath(path, state).vane_kgps).toBeCloseTo(expected_kgps, 8);
  });

  it('never passes more air through duct and vanes with more tape', () => {
    for (let open = 1; open > 0.01; open -= 0.02) {
      const more = solveAirPath(heavyFront, { ...rolling(180), openFraction: open });
      const less = solveAirPath(heavyFront, { ...rolling(180), openFraction: open - 0.02 });
      expect(less.duct_kgps).toBeLessThan(more.duct_kgps);
      expect(less.vane_kgps).toBeLessThan(more.vane_kgps);
    }
  });

  it('passes less air in thinner air, in a wake, through a compressed, a flattened and a bent hose', () => {
    const flow = (geometry: object, state: object): number =>
      solveAirPath({ ...heavyFront, ...geometry }, { ...rolling(180), ...state }).vane_kgps;
    const clear = flow({}, {});
    expect(flow({}, { density_kgpm3: 0.95 })).toBeCloseTo((clear * 0.95) / 1.184, 8);
    expect(flow({}, { qRatio: 0.75 })).toBeLessThan(clear);
    expect(flow({ compression: 0.15 }, {})).toBeLessThan(clear);
    expect(flow({ pinch: { flattened: 0.6, length_m: 0.5 } }, {})).toBeLessThan(clear);
    expect(flow({ bends: [...heavyFront.bends, ...heavyFront.bends] }, {})).toBeLessThan(clear);
  });

  it('with a larger leak takes in more air and brings less of it to the vanes', () => {
    const tight = solveAirPath(heavyFront, rolling(180));
    const leaky = solveAirPath({ ...heavyFront, leakArea_m2: 0.003 }, rolling(180));
    expect(leaky.duct_kgps).toBeGreaterThan(tight.duct_kgps);
    expect(leaky.vane_kgps).toBeLessThan(tight.vane_kgps);
  });

  it('feels the same tape more on a mouth that is small for its hoses', () => {
    const share = (ratio: number): number => {
      const geometry = { ...heavyFront, mouthArea_m2: ratio * 0.00907 };
      const open = solveAirPath(geometry, rolling(180)).duct_kgps;
      return solveAirPath(geometry, { ...rolling(180), openFraction: 0.5 }).duct_kgps / open;
    };
    expect(share(0.85)).toBeLessThan(0.75);
    expect(share(2.4)).toBeGreaterThan(0.92);
  });
});
