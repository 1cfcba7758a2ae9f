import { describe, expect, it } from 'vitest';
import { laggedReading } from '../../../engine/evidence/lag.ts';

describe('a sensor with a lag', () => {
  it('meets 63 % of a step after its lag, and shows the same however the time is cut', () => {
    const step = (lasts_s: number) => ({ from_K: 1, to_K: 1, lasts_s });
    expect(laggedReading(0, step(0.15), 0.15)).toBeCloseTo(1 - Math.exp(-1), 12);
    const half = laggedReading(0, { from_K: 0, to_K: 50, lasts_s: 0.4 }, 0.3);
    const whole = laggedReading(half, { from_K: 50, to_K: 100, lasts_s: 0.4 }, 0.3);
    expect(whole).toBeCloseTo(laggedReading(0, { from_K: 0, to_K: 100, lasts_s: 0.8 }, 0.3), 12);
  });

  it('stays behind a ramp by what that rises in one lag, and without lag by nothing', () => {
    const ramp = { from_K: 0, to_K: 1000, lasts_s: 10 };
    expect(laggedReading(0, ramp, 0.5)).toBeCloseTo(1000 - 100 * 0.5, 4);
    expect(laggedReading(0, ramp, 0)).toBe(1000);
  });
});
