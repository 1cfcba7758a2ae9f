import { describe, expect, it } from 'vitest';
import { despike } from '../../../engine/circuit/despike.ts';
import { localQuadratic } from '../../../engine/circuit/local-quadratic.ts';
import { gaussian, uniform } from '../../support/driving.ts';

describe('localQuadratic', () => {
  const x = Float64Array.from({ length: 40 }, (_, i) => i * 0.1 + 0.03 * Math.sin(i));
  const parabola = (t: number): number => 3 - 2 * t + 5 * t * t;

  it('keeps a parabola as it is, at uneven samples and at the ends', () => {
    const at = Float64Array.of(0, 0.77, 2, 3.9);
    const { value: fit } = localQuadratic({ x, y: x.map(parabola), at, halfWindow: 0.4 });
    at.forEach((place, i) => expect(fit[i]).toBeCloseTo(parabola(place), 9));
  });

  it('quietens noise', () => {
    const noise = gaussian(uniform(4));
    const wide = Float64Array.from({ length: 2000 }, (_, i) => i * 0.1);
    const { value: fit } = localQuadratic({ x: wide, y: wide.map(noise), at: wide, halfWindow: 0.4 });
    const rms = Math.sqrt(fit.reduce((sum, v) => sum + v * v, 0) / fit.length);
    expect(rms).toBeLessThan(0.75);
  });

  it('falls back on the nearest two samples where there are too few', () => {
    const { value: fit } = localQuadratic({
      x: Float64Array.of(0, 1, 2),
      y: Float64Array.of(0, 10, 40),
      at: Float64Array.of(0.5, 1.5),
      halfWindow: 0.6,
    });
    expect(Array.from(fit)).toEqual([5, 25]);
  });
});

describe('despike', () => {
  it('replaces a false sample by its neighbours’ median', () => {
    expect(despike(Float64Array.of(50, 50.1, 12, 50.2, 50.3))[2]).toBeCloseTo(50.1, 9);
  });

  it('passes hard braking unchanged', () => {
    const braking = Float64Array.from({ length: 30 }, (_, i) => 70 - 1.6 * Math.max(0, i - 10));
    expect(despike(braking)).toEqual(braking);
  });
});
