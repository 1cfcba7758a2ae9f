import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstFree, keepApart, overlaps, spreadLabels } from '../../../web/charts/place-labels.ts';
import { textWidth } from '../../../web/charts/text-width.ts';

describe('labels at the ends of lines', () => {
  it('never touch and never leave the chart', () => {
    const wanted = fc.array(fc.double({ min: 0, max: 240, noNaN: true }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(wanted, (places) => {
        const placed = spreadLabels(places, 17, 8, 232).sort((a, b) => a - b);
        expect(placed[0]).toBeGreaterThanOrEqual(8 - 1e-9);
        expect(placed.at(-1)).toBeLessThanOrEqual(232 + 1e-9);
        placed.slice(1).forEach((at, i) => {
          expect(at - (placed[i] ?? 0)).toBeGreaterThanOrEqual(17 - 1e-9);
        });
      }),
    );
  });

  it('stay where they belong when there is room', () => {
    expect(spreadLabels([100, 20, 60], 17, 0, 240)).toEqual([100, 20, 60]);
  });

  it('share a crowded place evenly and keep their order', () => {
    expect(spreadLabels([100, 100], 20, 0, 240)).toEqual([90, 110]);
  });
});

describe('labels in a row', () => {
  it('drop the less important of two that touch', () => {
    const kept = keepApart(
      [
        { x: 50, width: 40 },
        { x: 80, width: 40 },
        { x: 120, width: 40 },
      ],
      5,
    );
    expect(kept.map(({ x }) => x)).toEqual([50, 120]);
  });
});

describe('words inside an area', () => {
  const box = (left: number) => ({ left, top: 0, width: 40, height: 20 });

  it('go where no line passes', () => {
    const line = [
      { x: 0, y: 10 },
      { x: 60, y: 10 },
    ];
    expect(firstFree([box(0), box(30), box(70)], [line])).toEqual(box(70));
  });

  it('notice a line that crosses a box without a point in it', () => {
    const steep = [
      { x: 20, y: -500 },
      { x: 20, y: 500 },
    ];
    expect(firstFree([box(0)], [steep])).toBeNull();
  });

  it('keep off words that are already there', () => {
    expect(firstFree([box(0), box(50)], [], [box(10)])).toEqual(box(50));
    expect(overlaps(box(0), box(40))).toBe(false);
  });
});

describe('the width of lettering', () => {
  it('grows with the text and its weight', () => {
    expect(textWidth('too cold to bite')).toBeGreaterThan(textWidth('too cold'));
    expect(textWidth('650', 14, true)).toBeGreaterThan(textWidth('650'));
  });
});
