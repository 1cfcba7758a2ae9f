import { describe, expect, it } from 'vitest';
import { dynamicPressureRatioWake, towDragShare, wakeHeatRise } from '../../../engine/air/wake.ts';

const gaps_m = [0, 0.5, 1, 2.3, 5, 9, 15, 27, 60, 200, 2000];
const rising = (values: number[]): boolean => values.every((v, i) => i === 0 || v > (values[i - 1] ?? 0));

describe('the wake of a car ahead', () => {
  it('weakens steadily with the gap', () => {
    expect(rising(gaps_m.map((gap) => dynamicPressureRatioWake(gap)))).toBe(true);
    expect(rising(gaps_m.map((gap) => towDragShare(gap)))).toBe(true);
    expect(rising(gaps_m.map((gap) => -wakeHeatRise(gap)).map((v) => v + 2))).toBe(true);
  });

  it('is gone in clear air', () => {
    expect(dynamicPressureRatioWake(Infinity)).toBe(1);
    expect(towDragShare(Infinity)).toBe(1);
    expect(wakeHeatRise(Infinity)).toBe(0);
  });

  // From memory: the default's own targets, at half, two and six car lengths.
  it('leaves about 0.6, 0.75 and 0.9 of the dynamic pressure at 2.3, 9 and 27 m', () => {
    expect(dynamicPressureRatioWake(2.3)).toBeCloseTo(0.6, 1);
    expect(Math.abs(dynamicPressureRatioWake(9) - 0.75)).toBeLessThan(0.03);
    expect(Math.abs(dynamicPressureRatioWake(27) - 0.9)).toBeLessThan(0.03);
  });

  it('decays far behind with the two-thirds power of the gap', () => {
    const deficit = (gap: number): number => 1 - Math.sqrt(dynamicPressureRatioWake(gap));
    expect(deficit(8e5) / deficit(1e5)).toBeCloseTo(1 / 4, 3);
  });

  it('reaches farther behind a car with more drag', () => {
    expect(dynamicPressureRatioWake(9, 2)).toBeLessThan(dynamicPressureRatioWake(9, 0.7));
  });

  it('keeps the last value when a gap closes to nothing or below', () => {
    expect(dynamicPressureRatioWake(-1)).toBe(dynamicPressureRatioWake(0));
  });

  it('makes no tow at strength 0', () => expect(towDragShare(1, 0)).toBe(1));
});
