import { describe, expect, it } from 'vitest';
import { airPathOf, specOf } from '../../../engine/stint/corners.ts';
import { changed } from '../../support/stints.ts';

function frontOf(changes: Parameters<typeof changed>[0]) {
  const brake = changed(changes).brakes.front;
  const spec = specOf(brake, 0.345);
  return { spec, path: airPathOf(brake, spec) };
}

describe('the leak of a backing plate', () => {
  // 256 mm inner diameter: 804 mm of edge, so 1.5 mm of gap is 12.1 cm².
  it('is the stated area and the gap all round the inner edge together', () => {
    const { spec, path } = frontOf({
      'brakes.front.duct.leak_cm2': 4,
      'brakes.front.duct.leak_gap_mm': 1.5,
    });
    expect(spec.leakArea_m2 * 1e4).toBeCloseTo(4 + 12.064, 3);
    expect(path.leakArea_m2).toBe(spec.leakArea_m2);
  });

  it('can be none', () => {
    const sealed = { 'brakes.front.duct.leak_cm2': 0, 'brakes.front.duct.leak_gap_mm': 0 };
    expect(frontOf(sealed).spec.leakArea_m2).toBe(0);
  });
});

describe('the clearance of a hose', () => {
  const pinchAt = (changes: Parameters<typeof changed>[0]) => frontOf(changes).path.pinch;

  it('flattens it where it is lower than the hose, over the length of the narrow gap', () => {
    const pinch = pinchAt({
      'brakes.front.duct.clearance_mm': 38,
      'brakes.front.duct.clearance_length_m': 0.3,
    });
    expect(pinch).toEqual({ flattened: 0.5, length_m: 0.3 });
  });

  it('leaves it round where there is room', () => {
    expect(pinchAt({ 'brakes.front.duct.clearance_mm': null })).toBeNull();
    expect(pinchAt({ 'brakes.front.duct.clearance_mm': 76 })).toBeNull();
    expect(pinchAt({ 'brakes.front.duct.clearance_mm': 120 })).toBeNull();
  });
});
