import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import type { CornerSpread } from '../../../engine/index.ts';
import { dotView, DOT_PX } from '../../../web/charts/dot-view.ts';
import { coldestRow, dotsOf, hottestRow, squaresOf } from '../../../web/display/dots.ts';
import { staysIn } from '../../../web/display/doubt-words.ts';
import {
  coldestNote,
  coldestTitle,
  drawnStintWords,
  hottestNote,
  hottestTitle,
} from '../../../web/display/sure-words.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const hundred = Array.from({ length: 100 }, (_, i) => 800 + i);
const spread = (parts: Partial<CornerSpread> = {}): CornerSpread => ({
  axle: 'front',
  side: 'both',
  count: { in: 28, hot: 60, cold: 8, both: 4, notJudged: 0 },
  laps: [],
  hottest_K: hundred,
  coldest_K: hundred,
  stints: [],
  ...parts,
});

describe('twenty dots', () => {
  it('are each a draw, the middle one of those it stands for', () => {
    expect(dotsOf(hundred.toReversed())).toEqual(Array.from({ length: 20 }, (_, i) => 802 + 5 * i));
  });

  it('are on each side of any limit its share of the draws, to half a dot', () => {
    const draws = fc.array(fc.integer({ min: 600, max: 1000 }), { minLength: 20, maxLength: 200 });
    fc.assert(
      fc.property(draws, fc.integer({ min: 590, max: 1010 }), (values, limit) => {
        const { good, runs, of } = hottestRow(spread({ hottest_K: values }), limit);
        expect(Math.abs(good - (20 * runs) / of)).toBeLessThanOrEqual(0.5 + 1e-9);
      }),
    );
  });

  it('say how many stay below the limit, and what the verdicts of all runs add', () => {
    const row = hottestRow(spread(), 833.15);
    expect(plain(hottestTitle(row))).toBe('7 of 20 runs stay below 560 °C');
    expect(row.runs).toBe(34);
    expect(hottestNote(row, spread())).toBe(
      'Of all 100 runs 34; 2 more pass it for a moment, which the window allows.',
    );
    const bulk = spread({ count: { in: 22, hot: 66, cold: 8, both: 4, notJudged: 0 } });
    expect(hottestNote(row, bulk)).toBe('Of all 100 runs 34; of them 4 fail by the bulk.');
  });

  it('say the same of the coldest hard stop, of the draws that have one', () => {
    const row = coldestRow(
      spread({ coldest_K: [...hundred.slice(0, 40), ...new Array<null>(60).fill(null)] }),
      810,
    )!;
    expect([row.of, row.runs, row.good]).toEqual([40, 30, 15]);
    expect(plain(coldestTitle(row))).toMatch(/^15 of 20 runs start every hard stop above 537 °C$/);
    expect(coldestNote(coldestRow(spread(), 812)!, spread())).toBe('Of all 100 runs 88.');
    expect(coldestRow(spread({ coldest_K: [null, null] }), 810)).toBeNull();
  });

  it('never touch, and none lies across its limit', () => {
    const values = fc.array(fc.integer({ min: 600, max: 1000 }), { minLength: 1, maxLength: 100 });
    fc.assert(
      fc.property(values, fc.integer({ min: 620, max: 980 }), (hottest_K, limit) => {
        const row = hottestRow(spread({ hottest_K }), limit);
        const { dots, limit: line } = dotView(row, 320, (value) => value <= limit);
        expect(dots).toHaveLength(20);
        expect(dots.filter(({ isGood }) => isGood)).toHaveLength(row.good);
        for (const { x, isGood } of dots)
          expect(isGood ? line - x : x - line).toBeGreaterThanOrEqual(DOT_PX - 1e-9);
        dots.forEach((a, i) =>
          dots.slice(i + 1).forEach((b) => {
            expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThanOrEqual(2 * DOT_PX);
          }),
        );
      }),
    );
  });
});

describe('ten squares', () => {
  it('show the share that the sentence counts', () => {
    expect(staysIn(spread())).toEqual({ runs: 28, of: 100 });
    const squares = squaresOf(spread());
    expect(squares.map((share) => Number(share.toFixed(2)))).toEqual([1, 1, 0.8, 0, 0, 0, 0, 0, 0, 0]);
    expect(squares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(2.8, 12);
  });
});

describe('one drawn stint', () => {
  it('is told by its number, its extremes and its verdict', () => {
    const stints: CornerSpread['stints'] = [
      { status: 'hot', facePeak_K: [900, 940], coldestStop_K: [null, 690] },
    ];
    const one = spread({ stints, hottest_K: [940], coldest_K: [690] });
    expect(plain(drawnStintWords(one, 0))).toBe(
      'Run 1 of 1: face peak 665 °C, coldest stop 415 °C, too hot.',
    );
    expect(drawnStintWords(one, 3)).toBe('');
  });
});
