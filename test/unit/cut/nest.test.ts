import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fits, nested, turnedSize, type Size } from '../../../engine/cut/nest.ts';

const page = { width_mm: 180, height_mm: 240 };
const size = fc.record({
  width_mm: fc.double({ min: 10, max: 235, noNaN: true }),
  height_mm: fc.double({ min: 10, max: 235, noNaN: true }),
});
const onPage = size.filter((one) => fits(one, page) || fits(turnedSize(one), page));

/** Shelves from below, the tallest first, none turned: how many pages. */
function pagesUpright(pieces: readonly Size[]): number {
  const shelves: { height: number; used: number }[] = [];
  for (const { width_mm, height_mm } of [...pieces].sort((a, b) => b.height_mm - a.height_mm)) {
    const shelf = shelves.find(({ used }) => used + width_mm <= page.width_mm);
    if (shelf) shelf.used += width_mm + 5;
    else shelves.push({ height: height_mm, used: width_mm + 5 });
  }
  let [pages, left] = [0, 0];
  for (const { height } of shelves) {
    if (pages === 0 || height > left) [pages, left] = [pages + 1, page.height_mm];
    left -= height + 5;
  }
  return pages;
}

describe('pieces laid on pages', () => {
  it('each lie once, apart, inside of their page, on no more pages than if none were turned', () => {
    fc.assert(
      fc.property(fc.array(onPage, { minLength: 1, maxLength: 14 }), (pieces) => {
        const placed = nested(pieces, page);
        expect(placed.map(({ piece }) => piece).sort((a, b) => a - b)).toEqual(pieces.map((_, i) => i));
        const boxes = placed.map(({ piece, isTurned, x_mm, y_mm, ...at }) => {
          const { width_mm, height_mm } = isTurned ? turnedSize(pieces[piece]!) : pieces[piece]!;
          return { ...at, left: x_mm, low: y_mm, right: x_mm + width_mm, high: y_mm + height_mm };
        });
        for (const [i, a] of boxes.entries()) {
          expect(Math.min(a.left, a.low)).toBeGreaterThanOrEqual(0);
          expect(a.right).toBeLessThanOrEqual(page.width_mm + 1e-6);
          expect(a.high).toBeLessThanOrEqual(page.height_mm + 1e-6);
          for (const b of boxes.slice(i + 1)) {
            const between = Math.max(a.left - b.right, b.left - a.right, a.low - b.high, b.low - a.high);
            if (a.page === b.page) expect(between).toBeGreaterThan(4.999);
          }
        }
        for (const { piece, page: at, isTurned } of placed) {
          const isAlone = placed.filter((one) => one.page === at).length === 1;
          if (isAlone && fits(pieces[piece]!, page)) expect(isTurned).toBe(false);
        }
        const pages = Math.max(...placed.map((one) => one.page)) + 1;
        const upright = pieces.filter((one) => fits(one, page));
        if (upright.length === pieces.length) expect(pages).toBeLessThanOrEqual(pagesUpright(pieces));
      }),
      { numRuns: 400 },
    );
  });

  it('are turned where that saves a page or is the only way, and else stay upright', () => {
    const pagesAndTurns = (pieces: Size[]): [number, number] => {
      const placed = nested(pieces, page);
      return [Math.max(...placed.map((one) => one.page)) + 1, placed.filter((one) => one.isTurned).length];
    };
    const tall = { width_mm: 70, height_mm: 170 };
    expect(pagesAndTurns([tall, tall])).toEqual([1, 0]);
    expect(pagesAndTurns([tall, tall, { width_mm: 50, height_mm: 160 }])).toEqual([1, 1]);
    expect(pagesAndTurns([{ width_mm: 230, height_mm: 100 }])).toEqual([1, 1]);
  });
});
