import { describe, expect, it } from 'vitest';
import { isCode } from '../../../engine/cut/code.ts';
import { cutSheets, type CutRequest } from '../../../engine/cut/cut-sheets.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { problemLine } from '../../../engine/scenario/problem.ts';
import type { Duct } from '../../../engine/scenario/schema.ts';
import { areaOf, boundsOf } from '../../support/cut.ts';
import { readCutDxf } from '../../support/read-cut-dxf.ts';
import { readCutSvg, type Polygon } from '../../support/read-cut-svg.ts';

/** 90 mm high at its outboard edge, 40 mm at its inboard one. */
const wedge: Partial<Duct> = {
  mouth_shape: 'outline',
  mouth_outline_mm: [
    [0, 0],
    [120, 0],
    [120, 40],
    [0, 90],
  ],
};
const ask = (
  own: Partial<Duct>,
  more: Partial<CutRequest> = {},
  side: 'left' | 'right' = 'left',
): CutRequest => ({
  axle: 'front',
  ducts: [{ side, duct: { ...defaultScenario().brakes.front.duct!, ...own } }],
  panels: [{ letter: 'B', blanking_pct: 60 }],
  hold: 'tabs',
  fastener: 'M4',
  corner_mm: 3,
  kerf_mm: 0,
  bed: { paper: null, width_mm: 600, height_mm: 400 },
  correction: { across_mm: 100, up_mm: 100 },
  date: '2031-05-04',
  by: '',
  supersedes: '',
  modelHash: '12ab 34cd',
  hasTape: true,
  isExample: false,
  ...more,
});
const linesOf = (request: CutRequest): string[] => cutSheets(request).problems.map(problemLine);

/** What is cut, from the front of the car: across to the right, and up. */
function seen(request: CutRequest, file: 'svg' | 'dxf'): { cut: Polygon; marks: Polygon[]; out: number } {
  const text = cutSheets(request).panels[0]!.files[file];
  const { strokes, texts } = file === 'svg' ? readCutSvg(text) : readCutDxf(text);
  const upwards = ({ x, y }: { x: number; y: number }) => ({ x, y: file === 'svg' ? -y : y });
  const on = (layer: string): Polygon[] =>
    strokes.filter((stroke) => stroke.layer === layer).map(({ polygon }) => polygon.map(upwards));
  const x = (word: string): number => texts.find((one) => one.text === word)!.x;
  const largest = on('CUT').reduce((best, one) => (areaOf(one) > areaOf(best) ? one : best));
  return { cut: largest, marks: on('MARK'), out: x('OUT') - x('UP') };
}

/** How much of a polygon lies on the sides of its box. */
function onBox(polygon: Polygon): Record<'left' | 'right' | 'low' | 'high', number> {
  const box = boundsOf([polygon]);
  const extent = (of: 'x' | 'y', along: 'x' | 'y', at: number): number => {
    const there = polygon.filter((point) => Math.abs(point[of] - at) < 1e-3).map((point) => point[along]);
    return Math.max(...there) - Math.min(...there);
  };
  return {
    left: extent('x', 'y', box.left),
    right: extent('x', 'y', box.right),
    low: extent('y', 'x', box.low),
    high: extent('y', 'x', box.high),
  };
}

describe('sheets to be cut', () => {
  it.each(['svg', 'dxf'] as const)(
    'show a panel from the front: what covers the outboard part of a left mouth has its free edge at the left, OUT to the right and UP: %s',
    (file) => {
      const left = seen(ask(wedge), file);
      expect(onBox(left.cut).left).toBeGreaterThan(55); // the free edge; at the right is the end of the tab to pull by
      expect(onBox(left.cut).right).toBeLessThan(30);
      expect(left.out).toBeGreaterThan(0);
      const right = seen(ask(wedge, {}, 'right'), file);
      expect(onBox(right.cut).left).toBeLessThan(30);
      expect(onBox(right.cut).right).toBeGreaterThan(55);
      expect(right.out).toBeLessThan(0);
      const fromTop = onBox(seen(ask({ ...wedge, blank_from: 'top' }), file).cut);
      expect(fromTop.low).toBeGreaterThan(60);
      expect(fromTop.high).toBeLessThan(30);
      const marks = left.marks.map((mark) => boundsOf([mark]));
      const shaft = marks.find((box) => box.right - box.left < 0.01)!;
      const isHead = (box: typeof shaft): boolean => box.low > shaft.low + 1 && box.high === shaft.high;
      expect(marks.filter(isHead)).toHaveLength(1);
    },
  );

  it('lay the tape of a left mouth from the right, where its outboard edge is', () => {
    const [page] = cutSheets(ask(wedge)).tape;
    const { strokes, texts } = readCutSvg(page!.svg);
    const mouth = strokes
      .map(({ polygon }) => polygon)
      .find((one) => boundsOf([one]).right - boundsOf([one]).left > 119)!;
    const top = mouth.reduce((best, point) => (point.y < best.y ? point : best));
    expect(top.x).toBeCloseTo(boundsOf([mouth]).right, 3);
    const x = (text: string): number => texts.find((one) => one.text === text)!.x;
    expect(x('1')).toBeGreaterThan(x('2'));
  });

  it('are none where anything is wrong, and say of which panel', () => {
    const set = ask(
      {},
      {
        panels: [
          { letter: 'A', blanking_pct: 3 },
          { letter: 'B', blanking_pct: 60 },
        ],
      },
    );
    expect(cutSheets(set).panels).toEqual([]);
    expect(linesOf(set)).toEqual([
      'panel A.blanking_pct: expected a plate wider than 6 mm, got 3 (its corners have no room)',
    ]);
    const both = ask({}, { corner_mm: 1, correction: { across_mm: 90, up_mm: 100 } });
    expect(linesOf({ ...both, ducts: [...both.ducts, { ...both.ducts[0]!, side: 'right' }] })).toEqual([
      'corner_mm: expected at least 3, got 1 (no sharp edges)',
      expect.stringContaining('correction.measured_mm: expected 97 to 103 each'),
    ]);
  });

  it('are none where a kerf is no kerf, or would swallow an opening', () => {
    expect(linesOf(ask({}, { kerf_mm: 5 }))).toEqual(['kerf_mm: expected 0 to 3, got 5']);
    expect(linesOf(ask({}, { kerf_mm: Number.NaN }))).toHaveLength(1);
    const slots = { blank: 'slots' as const, blank_slots: 12 };
    const narrow = ask(slots, { kerf_mm: 1, panels: [{ letter: 'B', blanking_pct: 92 }] });
    expect(linesOf(narrow)).toEqual([
      'panel B.kerf_mm: expected less than the narrowest opening, got 1 (it cannot be cut so fine)',
    ]);
    expect(linesOf({ ...narrow, kerf_mm: 0.2 })).toEqual([]);
  });

  it('supersede no panel whose code was misread, but whatever else a panel was called', () => {
    const { code } = cutSheets(ask({})).facts[0]!;
    const [a, b, ...rest] = code;
    const exchanged = `${b}${a}${rest.join('')}`;
    const said = (supersedes: string): string[] => linesOf(ask({}, { supersedes }));
    expect([code, code.toLowerCase(), 'old B', ''].flatMap(said)).toEqual([]);
    expect(said(exchanged)).toEqual([
      `supersedes: expected the code of a panel, got '${exchanged}' (a character is wrong or two are exchanged)`,
    ]);
  });

  it('give every panel a code of its own: another fastener is another panel, another page is not', () => {
    const codes = (more: Partial<CutRequest>): string[] =>
      cutSheets(ask({}, more)).facts.map(({ code }) => code);
    const [as] = codes({});
    expect(isCode(as!)).toBe(true);
    expect(codes({ bed: { paper: 'A4' } })).toEqual([as]);
    for (const other of [{ fastener: 'M5' }, { hold: 'holes' }, { corner_mm: 4 }] as const)
      expect(codes(other)).not.toEqual([as]);
  });
});
