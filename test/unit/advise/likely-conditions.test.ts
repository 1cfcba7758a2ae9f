import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellBorders, likelyConditions } from '../../../engine/advise/likely-conditions.ts';
import { meanBelow, meanOf, shareBelow } from '../../../engine/advise/triangular.ts';
import type { Forecast } from '../../../engine/scenario/event-schema.ts';
import { sessionOf } from '../../support/events.ts';

const forecast: fc.Arbitrary<Forecast> = fc
  .array(fc.integer({ min: -20, max: 45 }), { minLength: 3, maxLength: 3 })
  .map((drawn) => {
    const [low = 0, likely = 0, high = 0] = drawn.sort((a, b) => a - b);
    return { low, likely, high };
  });

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** By the middle of many thin strips under the density: two straight lines. */
function summed({ low, likely, high }: Forecast, to: number): { share: number; mean: number } {
  const strips = 20_000;
  const width = (Math.min(to, high) - low) / strips;
  let [share, mean] = [0, 0];
  for (let i = 0; i < strips; i++) {
    const x = low + (i + 0.5) * width;
    const top = 2 / (high - low);
    const p = x < likely ? (top * (x - low)) / (likely - low) : (top * (high - x)) / (high - likely);
    share += p * width;
    mean += x * p * width;
  }
  return { share, mean };
}

describe('a triangular forecast', () => {
  const { low, likely, high } = { low: 12, likely: 16, high: 25 };
  it.each([13, 15.5, 16, 18, 24.5, 25])('has the chance and mean that adding up gives, up to %d', (to) => {
    const expected = summed({ low, likely, high }, to);
    expect(shareBelow(to, { low, likely, high })).toBeCloseTo(expected.share, 6);
    expect(meanBelow(to, { low, likely, high })).toBeCloseTo(expected.mean, 5);
  });

  it('is all below its high and none below its low, whatever its form', () => {
    fc.assert(
      fc.property(forecast, (of) => {
        expect(shareBelow(of.high, of)).toBe(1);
        expect(shareBelow(of.low - 1, of)).toBe(0);
        expect(meanBelow(of.high, of)).toBe(meanOf(of));
      }),
      { seed: 7 },
    );
  });
});

describe('likely conditions', () => {
  it('have chances that add up to one, over the event and in each session', () => {
    const sessions = fc.array(
      fc.record({
        ambient_C: forecast,
        traffic_pct: fc.constantFrom({ low: 0, likely: 0, high: 0 }, { low: 10, likely: 40, high: 100 }),
        gap_m: fc.constantFrom(8, 20),
        wet_pct: fc.constantFrom(0, 30, 100),
      }),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(sessions, (drawn) => {
        const all = likelyConditions(drawn.map((each) => sessionOf(each)));
        expect(sum(all.map(({ weight }) => weight))).toBeCloseTo(1, 12);
        for (const s of drawn.keys())
          expect(sum(all.map(({ inSession }) => inSession[s]!))).toBeCloseTo(1, 12);
        expect(all.every(({ weight }) => weight > 0)).toBe(true);
      }),
      { seed: 7 },
    );
  });

  it('keep the mean of the forecast, to the tenth of a degree of their cells', () => {
    const all = likelyConditions([sessionOf({ ambient_C: { low: 11, likely: 14, high: 29 } })]);
    expect(sum(all.map(({ weight, ambient_C }) => weight * ambient_C))).toBeCloseTo(18, 1);
  });

  it('are cut at whole degrees, into ten cells or fewer', () => {
    fc.assert(
      fc.property(forecast, (ambient_C) => {
        const borders = cellBorders([sessionOf({ ambient_C })]);
        expect(borders.length).toBeGreaterThanOrEqual(2);
        expect(borders.length - 1).toBeLessThanOrEqual(11);
        expect(borders.every(Number.isInteger)).toBe(true);
        expect(borders[0]).toBeLessThanOrEqual(ambient_C.low);
        expect(borders.at(-1)).toBeGreaterThanOrEqual(ambient_C.high);
      }),
      { seed: 7 },
    );
  });

  it('take the mean share of laps in traffic, and rain as independent of it', () => {
    const of = sessionOf({
      ambient_C: { low: 20, likely: 20, high: 20 },
      traffic_pct: { low: 0, likely: 30, high: 60 },
      gap_m: 12,
      wet_pct: 10,
    });
    expect(likelyConditions([of]).map(({ gap_m, isWet, weight }) => [gap_m, isWet, weight])).toEqual([
      [null, false, expect.closeTo(0.63, 12)],
      [12, false, expect.closeTo(0.27, 12)],
      [null, true, expect.closeTo(0.07, 12)],
      [12, true, expect.closeTo(0.03, 12)],
    ]);
  });

  it('change the weather and the gap of the stint, and say so by name', () => {
    const [only] = likelyConditions([sessionOf({ ambient_C: { low: 20, likely: 20, high: 20 } })]);
    expect(only).toMatchObject({ name: '20 to 21 °C, clear air, dry', ambient_C: 20 });
    expect(only!.changes).toEqual({
      'conditions.ambient_C': 20,
      'conditions.wet': false,
      'traffic.gap_m': null,
      'traffic.gap_s': null,
    });
  });
});
