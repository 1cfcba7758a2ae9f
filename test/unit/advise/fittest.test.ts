import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fittest } from '../../../engine/advise/fittest.ts';
import { smallerMargin_K, type Spare } from '../../../engine/advise/span.ts';

const spare = (blanking_pct: number, least_K: number): Spare => ({
  blanking_pct,
  panel: null,
  hotMargin_K: least_K,
  coldMargin_K: least_K + 5,
  count: null,
});

/** "x" a draw that is in. */
const drawn = (line: string): boolean[] => [...line].map((draw) => draw === 'x');
const chosen = (spares: Spare[], lines?: string[]): number | undefined =>
  fittest(spares, lines?.map(drawn))?.blanking_pct;

describe('what to fit', () => {
  it('has the most to spare where no draws were made', () => {
    expect(chosen([spare(40, 3), spare(60, 8), spare(75, 5)])).toBe(60);
    expect(chosen([])).toBeUndefined();
    expect(chosen([], [])).toBeUndefined();
  });

  const two = [spare(60, 3), spare(75, 8)];
  it.each([
    ['one draw more is chance', ['xx--', 'x---'], 75],
    ['two of two are not', ['xxx-', 'x---'], 60],
    // b 3, c 1 and b 3, c 0: the same draws in on both sides tell nothing
    ['two more of four that differ are chance', ['xxxxx-', 'xx---x'], 75],
    ['three more of three are not', ['xxxxx-', 'xx----'], 60],
    ['the margin of the one with more draws counts as well', ['xxx-', '--xx'], 75],
    [
      "17 of 33 that differ, as in the night's rain",
      ['x'.repeat(17) + '-'.repeat(16), '-'.repeat(17) + 'x'.repeat(16)],
      75,
    ],
    ['none in at all', ['----', '----'], 75],
  ])(
    'is decided by draws in, and where they are equal but for chance by what is to spare: %s',
    (_, lines, pct) => {
      expect(chosen(two, lines)).toBe(pct);
    },
  );

  it('is compared with the most draws in, not by way of a neighbour', () => {
    // 75 differs from 60 by chance, and 85 from 75, but not 85 from 60
    const lines = ['xxxx--', 'xxx---', 'xx----'];
    expect(chosen([spare(60, 1), spare(75, 2), spare(85, 3)], lines)).toBe(75);
  });

  const drawings = fc.integer({ min: 1, max: 40 }).chain((draws) =>
    fc.array(
      fc.record({
        least_K: fc.integer({ min: -20, max: 20 }),
        kept: fc.array(fc.boolean(), { minLength: draws, maxLength: draws }),
      }),
      { minLength: 1, maxLength: 6 },
    ),
  );

  it('is what an independent reckoning by the sign of each draw finds, in whatever order', () => {
    fc.assert(
      fc.property(drawings, (all) => {
        const spares = all.map(({ least_K }, i) => spare(i, least_K + i / 10));
        const sum = (values: number[]): number => values.reduce((total, value) => total + value, 0);
        const signs = (i: number, k: number): number[] =>
          all[i]!.kept.map((isIn, draw) => Number(isIn) - Number(all[k]!.kept[draw]));
        // the error of a sum of signs is the root of the sum of their squares
        const isBehind = (i: number, k: number): boolean => {
          const [by, squares] = [sum(signs(k, i)), sum(signs(k, i).map((sign) => sign * sign))];
          return by > Math.sqrt(squares) + 1e-9;
        };
        const places = spares.map((_, i) => i);
        const bySpare = places.toSorted((a, b) => smallerMargin_K(spares[b]!) - smallerMargin_K(spares[a]!));
        const leader = bySpare.toSorted((a, b) => sum(signs(b, a)))[0]!;
        const expected = bySpare.find((i) => !isBehind(i, leader))!;
        const order = [...places].reverse();
        for (const places of [order, order.toReversed()]) {
          const found = fittest(
            places.map((i) => spares[i]!),
            places.map((i) => all[i]!.kept),
          );
          expect(found).toBe(spares[expected]);
        }
      }),
      { numRuns: 500 },
    );
  });
});
