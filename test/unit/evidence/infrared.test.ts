import { describe, expect, it } from 'vitest';
import { bandRadiation, spotLength } from '../../../engine/evidence/infrared.ts';
import { radians } from '../../../engine/units.ts';

describe('the spot of an infrared sensor', () => {
  it('is as wide as its cone, and longer where the sensor leans', () => {
    expect(spotLength(0.05, radians(90))).toBeCloseTo(0.1, 9);
    expect(spotLength(0.06, radians(10))).toBeCloseTo(2 * 0.06 * Math.tan(radians(5)), 12);
    expect(spotLength(0.05, radians(35), radians(30))).toBeGreaterThan(spotLength(0.05, radians(35)));
  });
});

describe('radiation within a band', () => {
  it('is all of T⁴ over all wavelengths, and bands that meet add up', () => {
    const T = 900;
    expect(bandRadiation(T, { low_m: 1e-8, high_m: 1 }) / T ** 4).toBeCloseTo(1, 5);
    const [a, b] = [
      { low_m: 2e-6, high_m: 8e-6 },
      { low_m: 8e-6, high_m: 14e-6 },
    ].map((band) => bandRadiation(T, band));
    expect(a! + b!).toBeCloseTo(bandRadiation(T, { low_m: 2e-6, high_m: 14e-6 }), 3);
  });

  it('moves to short waves as it gets hotter', () => {
    const share = (T: number): number => bandRadiation(T, { low_m: 8e-6, high_m: 14e-6 }) / T ** 4;
    expect(share(1000)).toBeLessThan(share(600));
  });
});
