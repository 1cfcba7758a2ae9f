import { describe, expect, it } from 'vitest';
import { axleShare, brakeForce, brakeHeat } from '../../../engine/car/brake-heat.ts';
import { layoutCircuit } from '../../../engine/circuit/layout.ts';
import { speedProfile } from '../../../engine/circuit/speed-profile.ts';
import { circuits, heavyCar, heavyDriver, warmDay } from '../../support/driving.ts';

const layout = layoutCircuit(circuits.sorrelby);
const lap = speedProfile({ layout, car: heavyCar, driver: heavyDriver, air: warmDay });
const heat = brakeHeat(lap, heavyCar, warmDay);

describe('brakeForce', () => {
  const at = (accel_mps2: number, slope = 0): number =>
    brakeForce(heavyCar, warmDay, { accel_mps2, speedSquared: 3600, slope });

  it('is nothing on the throttle, at a held speed and on a lifted throttle', () => {
    expect([at(3), at(0), at(-1.5)]).toEqual([0, 0, 0]);
  });

  it('grows by the effective mass per deceleration', () => {
    expect(at(-10) - at(-9)).toBeCloseTo(1.05 * 1372.5, 6);
  });

  it('is more downhill', () => {
    expect(at(-9, -0.05)).toBeGreaterThan(at(-9) + 600);
  });
});

describe('brakeHeat', () => {
  it('adds up: power over time is the heat at each node', () => {
    let sum_J = 0;
    heat.power_W.slice(0, -1).forEach((p, i) => {
      sum_J += p * (lap.time_s[i + 1]! - lap.time_s[i]!);
      expect(Math.abs(heat.cumulative_J[i + 1]! - sum_J)).toBeLessThan(1e-6 * heat.total_J);
    });
    expect(heat.total_J).toBeCloseTo(sum_J, 0);
  });

  it('is never negative', () => {
    expect(Math.min(...heat.power_W)).toBe(0);
  });

  it('leaves the tyre its share', () => {
    const noSlip = brakeHeat(lap, { ...heavyCar, slip: 0 }, warmDay);
    expect(heat.total_J / noSlip.total_J).toBeCloseTo(0.94, 9);
  });

  it('comes only while the profile brakes: coasting makes none', () => {
    const braking = Array.from(heat.power_W.keys()).filter((i) => heat.power_W[i]! > 0);
    expect(Math.max(...braking.map((i) => lap.accel_mps2[i]!))).toBeLessThan(-0.5);
  });

  it('grows in proportion to nothing but what is left: less drag, more heat', () => {
    expect(brakeHeat(lap, heavyCar, { ...warmDay, dragFactor: 0.8 }).total_J).toBeGreaterThan(heat.total_J);
  });
});

describe('axleShare', () => {
  it('splits all of it between the axles', () => {
    expect(axleShare(0.64, 'front') + axleShare(0.64, 'rear')).toBeCloseTo(1, 12);
  });
});
