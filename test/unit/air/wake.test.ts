import { describe, expect, it } from 'vitest';
import { towDragShare } from '../../../engine/air/tow.ts';
import {
  deficitWake,
  dynamicPressureRatioWake,
  halfWidthWake,
  shareAcrossWake,
  wakeHeatRise,
} from '../../../engine/air/wake.ts';

const gaps_m = [0, 0.5, 1, 2.3, 5, 9, 15, 27, 60, 200, 2000];
const rising = (values: number[]): boolean => values.every((v, i) => i === 0 || v > (values[i - 1] ?? 0));
const ratioAt = (gap_m: number, more: object = {}): number => dynamicPressureRatioWake({ gap_m, ...more });

describe('the wake of a car ahead', () => {
  it('weakens steadily with the gap', () => {
    expect(rising(gaps_m.map((gap) => ratioAt(gap)))).toBe(true);
    expect(rising(gaps_m.map((gap_m) => towDragShare({ gap_m })))).toBe(true);
    expect(rising(gaps_m.map((gap_m) => 2 - wakeHeatRise({ gap_m })))).toBe(true);
  });

  it.each([{}, { offset_m: 2 }, { strength: 2 }])('is gone in clear air: %j', (more) => {
    expect(ratioAt(Infinity, more)).toBe(1);
    expect(towDragShare({ gap_m: Infinity, ...more })).toBe(1);
    expect(wakeHeatRise({ gap_m: Infinity, ...more })).toBe(0);
  });

  // From memory: the default's own targets, at half, two and six car lengths.
  it('leaves 0.62, 0.76 and 0.88 of the dynamic pressure in its middle at 2.3, 9 and 27 m', () => {
    expect(ratioAt(2.3)).toBeCloseTo(0.62, 2);
    expect(ratioAt(9)).toBeCloseTo(0.76, 2);
    expect(ratioAt(27)).toBeCloseTo(0.88, 2);
  });

  it('decays far behind with the two-thirds power of the gap', () => {
    const deficit = (gap_m: number): number => deficitWake({ gap_m });
    expect(deficit(8e5) / deficit(1e5)).toBeCloseTo(1 / 4, 3);
  });

  it('reaches farther behind a car with more drag', () => {
    expect(ratioAt(9, { dragArea_m2: 2 })).toBeLessThan(ratioAt(9, { dragArea_m2: 0.7 }));
  });

  it('keeps the last value when a gap closes to nothing or below', () => {
    expect(ratioAt(-1)).toBe(ratioAt(0));
  });

  it('makes no tow at strength 0', () => expect(towDragShare({ gap_m: 1 }, 0)).toBe(1));
});

describe('across the wake', () => {
  it('its deficit is half at the half-width', () => {
    const offset_m = halfWidthWake({ gap_m: 9 });
    expect(shareAcrossWake({ gap_m: 9, offset_m })).toBeCloseTo(0.5, 12);
    expect(shareAcrossWake({ gap_m: 9 })).toBe(1);
  });

  it('is about as wide as a car at its tail and spreads behind it', () => {
    const widths = [0, 9, 27, 60].map((gap_m) => halfWidthWake({ gap_m }));
    expect(rising(widths)).toBe(true);
    expect(widths[0]).toBeGreaterThan(0.8);
    expect(widths[0]).toBeLessThan(1.3);
  });

  // Over the road, a half plane: the momentum lost in the wake is the drag of the car ahead, ½ CdA in dynamic pressures of 2q.
  it.each([0, 2.3, 9, 27, 60])('holds the lost momentum of the car ahead at %d m', (gap_m) => {
    const dragArea_m2 = 1.05;
    const middle = deficitWake({ gap_m, dragArea_m2 });
    const step_m = 0.002;
    let lost_m2 = 0;
    for (let r = step_m / 2; r < 20; r += step_m) {
      const deficit = middle * shareAcrossWake({ gap_m, offset_m: r, dragArea_m2 });
      lost_m2 += deficit * (1 - deficit) * Math.PI * r * step_m;
    }
    expect(lost_m2).toBeCloseTo(dragArea_m2 / 2, 4);
  });

  it('gives clear air far beside the car, and less tow and warmth on the way there', () => {
    const offsets_m = [0, 0.5, 1, 2, 3, 5];
    expect(rising(offsets_m.map((offset_m) => ratioAt(9, { offset_m })))).toBe(true);
    expect(rising(offsets_m.map((offset_m) => towDragShare({ gap_m: 9, offset_m })))).toBe(true);
    expect(rising(offsets_m.map((offset_m) => 2 - wakeHeatRise({ gap_m: 9, offset_m })))).toBe(true);
    expect(ratioAt(9, { offset_m: 5 })).toBeGreaterThan(0.995);
  });

  it('is felt more from close by in the middle, and more from afar at 3 m beside it', () => {
    expect(ratioAt(2.3)).toBeLessThan(ratioAt(27));
    expect(ratioAt(2.3, { offset_m: 3 })).toBeGreaterThan(ratioAt(27, { offset_m: 3 }));
  });
});

describe('the strength of a wake', () => {
  it('scales the lost total pressure: none at 0, twice at 2', () => {
    for (const gap_m of [0, 9, 27]) {
      const lost = 1 - ratioAt(gap_m);
      expect(ratioAt(gap_m, { strength: 0 })).toBe(1);
      expect(1 - ratioAt(gap_m, { strength: 2 })).toBeCloseTo(2 * lost, 12);
      expect(ratioAt(gap_m, { strength: 2 })).toBeGreaterThan(0);
    }
  });
});
