import { describe, expect, it } from 'vitest';
import {
  cornerSpeedSquared,
  engineBrakingForce,
  frictionEllipse,
  slopeForce,
} from '../../../engine/car/longitudinal.ts';
import { drivenLoad } from '../../../engine/circuit/pace.ts';

describe('frictionEllipse', () => {
  it('leaves 0.8 along the car where 0.6 is used across it', () => {
    expect(frictionEllipse(0.6)).toBeCloseTo(0.8, 12);
  });

  it('leaves all on a straight and nothing at or beyond the limit', () => {
    expect([frictionEllipse(0), frictionEllipse(1), frictionEllipse(1.1)]).toEqual([1, 0, 0]);
  });
});

describe('engineBrakingForce', () => {
  it('takes a constant power in gear', () => {
    expect(engineBrakingForce(40e3, 60) * 60).toBeCloseTo(engineBrakingForce(40e3, 20) * 20, 6);
  });

  it('stays finite at rest: below first gear the force is held', () => {
    expect(engineBrakingForce(40e3, 0)).toBe(engineBrakingForce(40e3, 15));
  });
});

describe('cornerSpeedSquared', () => {
  it('does not care which way the corner turns', () => {
    expect(cornerSpeedSquared(-0.02, 1.2, 0.001)).toBe(cornerSpeedSquared(0.02, 1.2, 0.001));
  });

  it('has no limit where downforce grows faster than the need', () => {
    expect(cornerSpeedSquared(0.001, 1.2, 0.001)).toBe(Infinity);
    expect(cornerSpeedSquared(0, 1.2, 0)).toBe(Infinity);
  });
});

describe('slopeForce', () => {
  it('pulls downhill', () => {
    expect(slopeForce(1000, -0.05)).toBe(-slopeForce(1000, 0.05));
  });
});

describe('drivenLoad', () => {
  const car = { weightFront: 0.5, cgHeight_m: 0.5, wheelbase_m: 2.5 };

  it('rises at the rear and falls at the front with grip, and is all of it with both driven', () => {
    expect(drivenLoad({ ...car, drivenAxle: 'rear' }, 1)).toBeCloseTo(0.625, 12);
    expect(drivenLoad({ ...car, drivenAxle: 'front' }, 1)).toBeCloseTo(0.5 / 1.2, 12);
    expect(drivenLoad({ ...car, drivenAxle: 'both' }, 1)).toBe(1);
  });

  it('never exceeds the car', () => {
    expect(drivenLoad({ ...car, drivenAxle: 'rear', cgHeight_m: 2 }, 1.1)).toBe(1);
  });
});
