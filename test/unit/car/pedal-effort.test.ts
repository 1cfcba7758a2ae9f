import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effortBetween, frictionAt, pedalEffort } from '../../../engine/car/pedal-effort.ts';

const curve = [
  { face_K: 300, coefficient: 0.3 },
  { face_K: 600, coefficient: 0.48 },
  { face_K: 900, coefficient: 0.36 },
  { face_K: 1000, coefficient: 0.24 },
];
const temperature = fc.double({ min: 200, max: 1200, noNaN: true });

describe('friction', () => {
  it('is that of the list at its points', () => {
    expect(curve.map(({ face_K }) => frictionAt(curve, face_K))).toEqual([0.3, 0.48, 0.36, 0.24]);
  });

  it('runs straight between them', () => {
    expect(frictionAt(curve, 400)).toBeCloseTo(0.36, 12);
    expect(frictionAt(curve, 975)).toBeCloseTo(0.27, 12);
  });

  it('is held beyond the ends', () => {
    expect([frictionAt(curve, 1), frictionAt(curve, 299), frictionAt(curve, 1001)]).toEqual([0.3, 0.3, 0.24]);
  });
});

describe('pedal effort', () => {
  it('is 1 in the middle of the window and heavier where friction is lower', () => {
    expect(pedalEffort(curve, 700, 700)).toBe(1);
    expect(pedalEffort(curve, 1000, 600)).toBeCloseTo(0.48 / 0.24, 12);
  });

  it('does not change when a pad has more friction at all temperatures alike', () => {
    const double = curve.map(({ face_K, coefficient }) => ({ face_K, coefficient: 2 * coefficient }));
    fc.assert(
      fc.property(temperature, temperature, (face_K, middle_K) => {
        expect(pedalEffort(double, face_K, middle_K)).toBeCloseTo(pedalEffort(curve, face_K, middle_K), 12);
      }),
    );
  });

  it('over a stretch of temperatures has as extremes the least and the most met on the way', () => {
    fc.assert(
      fc.property(temperature, temperature, temperature, (a, b, middle_K) => {
        const [low_K, high_K] = [Math.min(a, b), Math.max(a, b)];
        const { lowest, highest } = effortBetween(curve, [low_K, high_K], middle_K);
        const met = Array.from({ length: 2001 }, (_, i) =>
          pedalEffort(curve, low_K + (i * (high_K - low_K)) / 2000, middle_K),
        );
        expect(Math.min(...met)).toBeGreaterThanOrEqual(lowest - 1e-12);
        expect(Math.max(...met)).toBeLessThanOrEqual(highest + 1e-12);
        expect(Math.min(...met)).toBeCloseTo(lowest, 2);
        expect(Math.max(...met)).toBeCloseTo(highest, 2);
      }),
    );
  });

  it('is lowest where friction has its top, though no stop begins or ends there', () => {
    expect(effortBetween(curve, [500, 700], 800).lowest).toBeCloseTo(0.4 / 0.48, 12);
  });
});
