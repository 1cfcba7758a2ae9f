import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankingAreas } from '../../../web/charts/blanking-field.ts';
import { isOver, movedPoint, pointAt } from '../../../web/charts/blanking-point.ts';
import { blankingView, linesWithin, type BlankingView } from '../../../web/charts/blanking-view.ts';
import { areaWords, percentTicks, sideLabels } from '../../../web/charts/blanking-words.ts';
import type { Point } from '../../../web/charts/columns.ts';
import { overlaps } from '../../../web/charts/place-labels.ts';
import { textWidth } from '../../../web/charts/text-width.ts';
import { blankedLap } from '../../../web/display/blanked-lap.ts';
import { sampleMap, type MapOptions } from '../../support/sample-map.ts';
import { ordinaryKinds, sampleResult } from '../../support/sample-result.ts';

const result = sampleResult({ kinds: ordinaryKinds });
const LAPS = ordinaryKinds.length;
const viewOf = (options: MapOptions = {}, width = 640): BlankingView => {
  const map = sampleMap({ laps: LAPS, uncounted: 4, ...options });
  return blankingView(map, blankingAreas(map), result, width, 300);
};

/** Whether a point lies in an area, by the crossings of a ray to its right. */
const isIn = (area: Point[][], { x, y }: Point): boolean =>
  area
    .flatMap((ring) => ring.map((b, i) => [ring.at(i - 1)!, b] as const))
    .filter(([a, b]) => a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x).length %
    2 ===
  1;

describe('the areas of the map', () => {
  const edges = (lap: number): readonly [number, number] => [90 - lap, 30 + lap];

  it('part every lap where its verdict turns, to the percent', () => {
    const { inside, tooHot, tooCold, x, y } = viewOf({ edges });
    for (const { lap, middle } of x.laps) {
      const [hotFrom, coldTo] = edges(lap.lap);
      const at = (area: Point[][], pct: number): boolean => isIn(area, { x: middle + 0.01, y: y.of(pct) });
      expect([coldTo - 1, coldTo + 1, hotFrom - 1, hotFrom + 1].map((pct) => at(inside, pct))).toEqual([
        false,
        true,
        true,
        false,
      ]);
      expect([hotFrom - 1, hotFrom + 1].map((pct) => at(tooHot, pct))).toEqual([false, true]);
      expect([coldTo - 1, coldTo + 1].map((pct) => at(tooCold, pct))).toEqual([true, false]);
    }
  });

  it('agree with the judge where a brief excess is forgiven', () => {
    const map = sampleMap({ laps: LAPS });
    for (const { blanking_pct, laps } of map.rows) {
      for (const lap of laps) {
        lap.tooHot = blanking_pct > 80;
        lap.in = !lap.tooHot && !lap.tooCold;
      }
    }
    const { inside, x, y } = blankingView(map, blankingAreas(map), result, 640, 300);
    const at = (pct: number): boolean => isIn(inside, { x: x.laps[9]!.middle + 0.01, y: y.of(pct) });
    expect(at(75)).toBe(true);
    expect(at(79.9)).toBe(true);
    expect(at(85)).toBe(false);
  });

  it('reach to the frame where nothing bounds them, and their line leaves the frame out', () => {
    const { inside, contour, frame } = viewOf({ edges: () => [120, -20] });
    const [xs, ys] = [inside.flat().map(({ x }) => x), inside.flat().map(({ y }) => y)];
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([frame.left, frame.left + frame.width]);
    expect([Math.min(...ys), Math.max(...ys)]).toEqual([frame.top, frame.top + frame.height]);
    expect(contour).toEqual([]);
  });

  it('are two where a swing is wider than the window, and nothing is inside', () => {
    const { inside, tooHot, tooCold, x, y } = viewOf({ edges: () => [40, 60] });
    expect(inside).toEqual([]);
    const both = { x: x.laps[8]!.middle + 0.01, y: y.of(50) };
    expect([isIn(tooHot, both), isIn(tooCold, both)]).toEqual([true, true]);
  });

  it('pale all laps that do not count, joined', () => {
    const { pale, x } = viewOf();
    const counted = x.laps.filter(({ lap }) => lap.counted);
    expect(pale).toHaveLength(2);
    expect(pale[0]!.right).toBeCloseTo(counted[0]!.left);
    expect(pale[1]!.left).toBeCloseTo(counted.at(-1)!.right);
  });
});

it('a closed outline is cut where it runs along the frame, and only there', () => {
  const frame = { left: 0, top: 0, width: 100, height: 100 };
  const ring = [
    [0, 50],
    [50, 40],
    [100, 50],
    [100, 100],
    [0, 100],
    [0, 50],
  ].map(([x, y]) => ({ x: x!, y: y! }));
  expect(linesWithin(ring, frame)).toEqual([ring.slice(0, 3)]);
});

describe('a lap at any blanking', () => {
  const map = sampleMap();

  it('is as it was run where it was run, and in proportion between', () => {
    expect(blankedLap(map, 3, 60)).toEqual(map.rows[12]!.laps[3]);
    const between = blankedLap(map, 3, 62)!;
    expect(between.hotMargin_K).toBeCloseTo(8, 9);
    expect(between).toMatchObject({ lap: 4, in: true, tooHot: false, tooCold: false });
    expect(blankedLap(map, 3, 67)).toMatchObject({ in: false, tooHot: true });
    expect(blankedLap(map, 0, 67)).toMatchObject({ in: null, tooHot: true });
  });

  it('keeps a margin endless that nothing meets', () => {
    const still = sampleMap();
    for (const { laps } of still.rows)
      for (const lap of laps)
        Object.assign(lap, { coldMargin_K: Infinity, coldestStop_K: null, tooCold: false });
    expect(blankedLap(still, 2, 61)).toMatchObject({ coldMargin_K: Infinity, coldestStop_K: null });
  });

  it('is none beyond the map', () => {
    expect(blankedLap(map, 99, 60)).toBeNull();
    expect(blankedLap(map, 2, 101)).toBeNull();
  });
});

describe('a point on the map', () => {
  const { frame, x, y } = viewOf();

  it('comes back from where it is drawn', () => {
    fc.assert(
      fc.property(fc.nat({ max: LAPS - 1 }), fc.nat({ max: 100 }), (place, blanking_pct) => {
        const at = { x: x.laps[place]!.middle, y: y.of(blanking_pct) };
        expect(pointAt({ x, y }, at)).toEqual({ place, blanking_pct });
      }),
    );
  });

  it('is nowhere beside the frame', () => {
    expect(isOver(frame, { x: frame.left + 5, y: frame.top + 5 })).toBe(true);
    expect(isOver(frame, { x: frame.left + frame.width + 40, y: frame.top + 5 })).toBe(false);
  });

  it.each([
    ['ArrowRight', false, { place: 4, blanking_pct: 57 }],
    ['ArrowLeft', false, { place: 2, blanking_pct: 57 }],
    ['ArrowUp', false, { place: 3, blanking_pct: 60 }],
    ['ArrowDown', false, { place: 3, blanking_pct: 55 }],
    ['ArrowUp', true, { place: 3, blanking_pct: 58 }],
    ['ArrowDown', true, { place: 3, blanking_pct: 56 }],
    ['Home', false, { place: 0, blanking_pct: 57 }],
    ['End', false, { place: LAPS - 1, blanking_pct: 57 }],
  ])('is moved by %s (Shift: %s)', (key, shiftKey, to) => {
    expect(movedPoint({ place: 3, blanking_pct: 57 }, { key, shiftKey }, LAPS)).toEqual(to);
  });

  it('stays on the map, and other keys leave it alone', () => {
    const corner = { place: 0, blanking_pct: 0 };
    expect(movedPoint(corner, { key: 'ArrowDown', shiftKey: false }, LAPS)).toEqual(corner);
    expect(movedPoint(corner, { key: 'ArrowLeft', shiftKey: false }, LAPS)).toEqual(corner);
    expect(movedPoint(corner, { key: 'a', shiftKey: false }, LAPS)).toBeNull();
  });
});

describe('the lettering of the map', () => {
  it.each([320, 560, 900])('stands whole in the area it names, at %d px', (width) => {
    const view = viewOf({ edges: () => [70, 45] }, width);
    const words = areaWords(view, width);
    expect(words).toHaveLength(3);
    const areas = [view.tooHot, view.inside, view.tooCold];
    words.forEach(({ text, x, y }, i) => {
      const half = textWidth(text, 14, true) / 2;
      for (const dx of [-half, 0, half])
        for (const dy of [-12, 3]) expect(isIn(areas[i]!, { x: x + dx, y: y + dy }), text).toBe(true);
    });
  });

  it('leaves out what has no room', () => {
    const words = areaWords(viewOf({ edges: () => [60, 58] }), 640);
    expect(words.map(({ text }) => text)).toEqual(['too hot', 'too cold']);
  });

  it('keeps panels and what is fitted now apart, and joins them where they are one', () => {
    const view = viewOf();
    const labels = sideLabels(view, [0, 40, 60, 75], 58);
    const boxes = labels.map(({ y }) => ({ left: 0, top: y - 7, width: 40, height: 14 }));
    boxes.forEach((box, i) => expect(boxes.slice(i + 1).some((other) => overlaps(box, other))).toBe(false));
    expect(labels.at(-1)).toMatchObject({ text: 'now 58\u00a0%', of: 'now' });
    expect(sideLabels(view, [0, 40, 60, 75], 60).map(({ text }) => text.replaceAll('\u00a0', ' '))).toEqual([
      'A  0 %',
      'B  40 %',
      'D  75 %',
      'C  now 60 %',
    ]);
  });

  it('name what pinned runs had at its height, and letters no area across its line', () => {
    const view = viewOf();
    const held = { name: 'pinned 50 %', label: 'pinned 50 %', dash: 1, blanking_pct: 50 };
    const label = sideLabels(view, [0, 60], 70, [held]).find((each) => each.of === 'pinned');
    expect(label).toMatchObject({ text: 'pinned 50 %', at: view.y.of(50) });
    for (let blanking_pct = 2; blanking_pct < 100; blanking_pct += 7) {
      const across = view.y.of(blanking_pct);
      for (const { y } of areaWords(view, 640, [{ ...held, blanking_pct }]))
        expect(across > y + 3 || across < y - 12, `${blanking_pct}`).toBe(true);
    }
  });

  it('marks the ends of the safe span, and round percents where they have room', () => {
    const view = viewOf();
    const texts = (span: readonly [number, number] | null): string[] =>
      percentTicks(view, span).map(({ text, isEnd }) => (isEnd ? `${text}!` : text));
    expect(texts(null)).toEqual(['0', '20', '40', '60', '80', '100']);
    expect(texts([56.4, 66.2])).toEqual(['0', '20', '40', '80', '100', '57!', '66!']);
    expect(texts([0, 82])).toEqual(['0', '20', '40', '60', '100', '82!']);
  });
});
