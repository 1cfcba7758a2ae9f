import { Clipper, EndType, FillRule, JoinType, PointInPolygonResult } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NOT_FOR_A_CAR } from '../../../engine/cut/cautions.ts';
import { sheetDxf } from '../../../engine/cut/dxf.ts';
import type { FrameWish } from '../../../engine/cut/frame.ts';
import { drawn } from '../../../engine/cut/drawing.ts';
import { kerfProblems } from '../../../engine/cut/panel-checks.ts';
import { drawPanel } from '../../../engine/cut/panel.ts';
import { boxOf, flattened } from '../../../engine/cut/path.ts';
import { pieceOf, type Piece } from '../../../engine/cut/piece.ts';
import { cutsOf, type Plate } from '../../../engine/cut/plate.ts';
import { layOut, trueToSize, type Sheet } from '../../../engine/cut/sheets.ts';
import { sheetSvg } from '../../../engine/cut/svg.ts';
import { corner } from '../../../engine/duct/loop.ts';
import { problemLine } from '../../../engine/scenario/problem.ts';
import {
  areaOf,
  BLANKS,
  boundsOf,
  FRAME,
  MOUTHS,
  netArea,
  panelOf,
  piecesOf,
  wishOf,
  WORDS,
} from '../../support/cut.ts';
import { readCutDxf } from '../../support/read-cut-dxf.ts';
import { readCutSvg, type Polygon, type ReadSheet } from '../../support/read-cut-svg.ts';

const svgOf = (pieces: Piece[], more: Partial<FrameWish> = {}): ReadSheet[] =>
  layOut(pieces, { ...FRAME, ...more }).sheets.map((sheet) => readCutSvg(sheetSvg(sheet)));
const onLayer = (strokes: { layer: string; polygon: Polygon }[], layer: string): Polygon[] =>
  strokes.filter((stroke) => stroke.layer === layer).map(({ polygon }) => polygon);

const BED = { paper: null, width_mm: 600, height_mm: 400 } as const;
const all = Object.entries(MOUTHS).flatMap(([name, mouth]) =>
  BLANKS.map((blank) => ({
    name: `${name}, ${Object.values(blank).join(' ')}`,
    panel: panelOf(mouth, blank, { blanking_pct: 75 }),
  })),
);

const anyWish = fc
  .record({
    mouth: fc.oneof(
      fc.constant(MOUTHS.traced!),
      fc.record({
        mouth_shape: fc.constantFrom(
          'rectangle' as const,
          'rounded rectangle' as const,
          'round' as const,
          'oval' as const,
        ),
        mouth_width_mm: fc.integer({ min: 80, max: 180 }),
        mouth_height_mm: fc.integer({ min: 70, max: 150 }),
        mouth_corner_mm: fc.integer({ min: 0, max: 30 }),
      }),
    ),
    blank: fc.record({
      blank: fc.constantFrom('edge' as const, 'hole' as const, 'slots' as const, 'perforated' as const),
      blank_from: fc.constantFrom('outboard' as const, 'inboard' as const, 'top' as const, 'bottom' as const),
      blank_slots: fc.integer({ min: 2, max: 5 }),
      blank_hole_mm: fc.integer({ min: 12, max: 25 }),
    }),
    more: fc.record({
      blanking_pct: fc.integer({ min: 25, max: 95 }),
      hold: fc.constantFrom('tabs' as const, 'holes' as const),
      fastener: fc.constantFrom('quarter-turn' as const, 'M4' as const, 'M5' as const),
      corner_mm: fc.constantFrom(3, 5),
      hose_mm: fc.integer({ min: 50, max: 130 }),
    }),
  })
  .map(({ mouth, blank, more }) => wishOf(mouth, blank, more));

describe('a panel on a sheet, measured by other readers', () => {
  it('has the planned area and box in SVG and in DXF, whatever its mouth, blank, hold, kerf and side', () => {
    fc.assert(
      fc.property(anyWish, fc.constantFrom(0, 0.1, 0.4, 1), fc.boolean(), (wish, kerf_mm, isLeft) => {
        const { plates, problems } = drawPanel(wish);
        fc.pre(problems.length === 0 && kerfProblems(plates, kerf_mm).length === 0);
        for (const plate of plates) {
          const side = isLeft ? 'left' : 'right';
          const piece = pieceOf({ plate, words: { ...WORDS, side }, kerf_mm });
          const [sheet] = layOut([piece], { ...FRAME, bed: BED }).sheets;
          const box = boxOf([plate.edge]);
          for (const { strokes } of [readCutSvg(sheetSvg(sheet!)), readCutDxf(sheetDxf(sheet!))]) {
            const polygons = onLayer(strokes, 'CUT');
            expect(Math.abs(netArea(polygons) / planned_mm2(plate, kerf_mm) - 1)).toBeLessThan(0.001);
            const bounds = boundsOf(polygons);
            const [width, height] = [bounds.right - bounds.left, bounds.high - bounds.low];
            expect(Math.abs(width - kerf_mm - (box.right_mm - box.left_mm))).toBeLessThan(0.05);
            expect(Math.abs(height - kerf_mm - (box.top_mm - box.bottom_mm))).toBeLessThan(0.05);
            expect(longestOf(polygons)).toBeGreaterThan(wish.hose_mm); // or the hose could draw it in
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  it('has a straight edge where a handbook of geometry puts it', () => {
    // 60 % of 120 by 80 mm is 72 mm by 80 mm, and what four corners of R3 lose lies in one more strip along the edge
    const [sheet] = svgOf(piecesOf(panelOf(MOUTHS.rectangle!, {}, { hold: 'holes' })));
    const { left, right } = boundsOf(onLayer(sheet!.strokes, 'CUT'));
    expect(right - left).toBeCloseTo(72 + (4 * (1 - Math.PI / 4) * 9) / 80, 2);
  });

  it('is moved outwards by half the kerf, its holes inwards', () => {
    const [plate] = panelOf(MOUTHS.round!, { blank: 'hole' }).plates;
    const cut = (kerf_mm: number): Polygon[] => {
      const piece = pieceOf({ plate: plate!, words: WORDS, kerf_mm });
      const polygons = onLayer(svgOf([piece], { bed: BED })[0]!.strokes, 'CUT');
      return polygons.sort((a, b) => areaOf(b) - areaOf(a));
    };
    const width = (polygon: Polygon): number => boundsOf([polygon]).right - boundsOf([polygon]).left;
    const [exact, wide] = [cut(0), cut(0.4)];
    expect(width(wide[0]!) - width(exact[0]!)).toBeCloseTo(0.4, 3);
    for (let i = 1; i < exact.length; i++) expect(width(wide[i]!) - width(exact[i]!)).toBeCloseTo(-0.4, 3);
  });

  it('is the mirror image on the right, with lettering that reads', () => {
    const panel = panelOf(MOUTHS.traced!, {});
    const [left, right] = (['left', 'right'] as const).map((side) => svgOf(piecesOf(panel, { side }))[0]!);
    const [a, b] = [left, right].map((sheet) => onLayer(sheet!.strokes, 'CUT')) as [Polygon[], Polygon[]];
    const edge = (polygons: Polygon[]): Polygon =>
      polygons.reduce((best, one) => (areaOf(one) > areaOf(best) ? one : best));
    const [from, to] = [boundsOf([edge(a)]), boundsOf([edge(b)])];
    const mirrored = edge(a).map(({ x, y }) => ({ x: to.left + from.right - x, y }));
    const both = Clipper.intersectD([mirrored], [edge(b)], FillRule.NonZero, 4);
    expect(Math.abs(Clipper.areaPathsD(both))).toBeCloseTo(areaOf(edge(a)), 0);
    expect(right!.texts.some(({ text }) => text.includes('front right'))).toBe(true);
  });
});

/** What the tool leaves of a plate's path: half of the kerf more at its edge and less in its openings, moved by a library. */
function planned_mm2(plate: Plate, kerf_mm: number): number {
  const [edge, ...openings] = cutsOf(plate).map((loop) =>
    flattened(loop).map((p) => ({ x: p.x_mm, y: p.y_mm })),
  );
  const areaMoved = (path: Polygon, by_mm: number): number => {
    const left = Clipper.isPositiveD(path) ? path : path.toReversed();
    const moved = Clipper.inflatePathsD([left], by_mm, JoinType.Round, EndType.Polygon, 2, 5, 0.002);
    return Clipper.areaPathsD(moved);
  };
  return openings.reduce((rest, path) => rest - areaMoved(path, -kerf_mm / 2), areaMoved(edge!, kerf_mm / 2));
}

const longestOf = (polygons: readonly Polygon[]): number => {
  const whole = polygons.reduce((best, one) => (areaOf(one) > areaOf(best) ? one : best));
  const points = whole.filter((_, i) => i % 16 === 0);
  return Math.max(...points.map((a) => Math.max(...points.map((b) => Math.hypot(a.x - b.x, a.y - b.y)))));
};

/** Panels of many sizes, left and right: sets of them are drawn at random. */
const sizes = [
  { mouth_width_mm: 75, mouth_height_mm: 70 },
  { mouth_width_mm: 150, mouth_height_mm: 60 },
  { mouth_width_mm: 90, mouth_height_mm: 160 },
  { mouth_width_mm: 230, mouth_height_mm: 190 },
];
const shelf = sizes.flatMap((size, i) =>
  (['rectangle', 'oval', 'rounded rectangle', 'round'] as const).flatMap((mouth_shape, k) => {
    const side = (i + k) % 2 === 0 ? 'left' : 'right';
    const panel = panelOf({ mouth_shape, ...size }, BLANKS[(i + k) % 4]!, { blanking_pct: 40 + 10 * i });
    return piecesOf(panel, { side });
  }),
);
const anySet = fc.array(fc.constantFrom(...shelf), { minLength: 1, maxLength: 8 });
const anyBed = fc.oneof(
  fc.constantFrom<FrameWish['bed']>({ paper: 'A4' }, { paper: 'Letter' }),
  fc.record({
    paper: fc.constant(null),
    width_mm: fc.integer({ min: 380, max: 900 }),
    height_mm: fc.integer({ min: 380, max: 900 }),
  }),
);
const anyCorrection = fc.record({
  across_mm: fc.constantFrom(97.2, 99, 100, 100.5, 103),
  up_mm: fc.constantFrom(97, 100, 101.3),
});

/** Edges of plates: those that lie in no other. */
const outlines = (polygons: Polygon[]): Polygon[] => {
  const boxes = polygons.map((polygon) => boundsOf([polygon]));
  const isWithin = (i: number, k: number): boolean => {
    const [a, b] = [boxes[i]!, boxes[k]!];
    if (a.left < b.left || a.right > b.right || a.low < b.low || a.high > b.high) return false;
    return Clipper.pointInPolygonD(polygons[i]![0]!, polygons[k]!, 4) === PointInPolygonResult.IsInside;
  };
  return polygons.filter((_, i) => !polygons.some((_other, k) => k !== i && isWithin(i, k)));
};

describe('sheets', () => {
  it('hold any set of panels without overlap, inside of the margins, rulers and lettering too', () => {
    fc.assert(
      fc.property(anySet, anyBed, anyCorrection, (pieces, bed, correction) => {
        const { sheets, problems } = layOut(pieces, { ...FRAME, bed, correction });
        expect(problems).toEqual([]);
        const whole = sheets.filter(({ isPart }) => !isPart).map((sheet) => readCutSvg(sheetSvg(sheet)));
        whole.forEach(expectApart);
        whole.forEach(expectInside);
        const found = whole.flatMap(({ strokes }) => outlines(onLayer(strokes, 'CUT')));
        if (sheets.length === whole.length) expect(found).toHaveLength(pieces.length);
      }),
      { numRuns: 40 },
    );
  });

  it('have two rulers of 100 mm at right angles, as printed, also where the printer is corrected', () => {
    for (const bed of [{ paper: 'A4' }, { paper: 'Letter' }, BED] as FrameWish['bed'][]) {
      for (const correction of [
        { across_mm: 100, up_mm: 100 },
        { across_mm: 98, up_mm: 102.5 },
      ]) {
        const [sheet] = svgOf(piecesOf(panelOf(MOUTHS.round!, {})), { bed, correction });
        const corners = onLayer(sheet!.strokes, 'RULER').find(
          (polygon) => new Set(polygon.map(({ x }) => x)).size > 2 && areaOf(polygon) > 1000,
        )!;
        const { left, right, low, high } = boundsOf([corners]);
        const [across, up] = sheet!.scale;
        expect(((right - left) * across * correction.across_mm) / 100).toBeCloseTo(100, 2);
        expect(((high - low) * up * correction.up_mm) / 100).toBeCloseTo(100, 2);
        expect(areaOf(corners)).toBeCloseTo(5000, 0); // a right angle: half of a square
        expect(sheet!.texts.map(({ text }) => text)).toContain(
          'Measure both before cutting. Not 100 mm? Do not cut.',
        );
      }
    }
  });

  it('are as large as their paper, a user unit a millimetre, and say what they are', () => {
    const [a4] = svgOf(piecesOf(panelOf(MOUTHS.round!, {})));
    expect([a4!.width, a4!.height, a4!.viewBox]).toEqual(['210mm', '297mm', [0, 0, 210, 297]]);
    const [letter] = svgOf(piecesOf(panelOf(MOUTHS.round!, {})), { bed: { paper: 'Letter' } });
    expect([letter!.width, letter!.height, letter!.viewBox]).toEqual([
      '215.9mm',
      '279.4mm',
      [0, 0, 215.9, 279.4],
    ]);
    const { sheets } = layOut(piecesOf(panelOf(MOUTHS.round!, {})), FRAME);
    expect(sheetSvg(sheets[0]!)).toMatch(
      /<title>Panels, sheet 1 of 1<\/title>\n<desc>In millimetres, seen from the front of the car\..*<\/desc>/,
    );
  });

  it('say in print that they are corrected, and by how much; what is saved is true to size and says nothing of it', () => {
    const pieces = piecesOf(panelOf(MOUTHS.round!, {}));
    const correction = { across_mm: 99, up_mm: 102 };
    const [sheet] = layOut(pieces, { ...FRAME, correction }).sheets;
    const printed = readCutSvg(sheetSvg(sheet!));
    expect(printed.texts.map(({ text }) => text)).toContain(
      'CORRECTED for a printer that made 100 mm 99 across and 102 up: drawn x 1.0101 and 0.9804',
    );
    expect(printed.scale[0]).toBeCloseTo(1.0101, 4);
    const file = readCutSvg(sheetSvg(trueToSize(sheet!)));
    const inRoom = (texts: readonly { text: string }[]): string => texts.map(({ text }) => text).join();
    for (const texts of [file.texts, readCutDxf(sheetDxf(sheet!)).texts])
      expect(inRoom(texts)).not.toContain('CORRECTED');
    expect(file.scale).toEqual([1, 1]);
    expect(file.viewBox.slice(2)).toEqual([210 * 0.99, 297 * 1.02].map((mm) => expect.closeTo(mm, 3)));
    const plain = svgOf(pieces)[0]!;
    const size = ({ strokes }: ReadSheet): number[] => {
      const { left, right, low, high } = boundsOf(onLayer(strokes, 'CUT'));
      return [right - left, high - low];
    };
    expect(size(file)).toEqual(size(plain).map((mm) => expect.closeTo(mm, 3)));
  });

  it('are refused for a printer that is off by more than 3 %, with one problem', () => {
    const { sheets, problems } = layOut(piecesOf(panelOf(MOUTHS.round!, {})), {
      ...FRAME,
      correction: { across_mm: 96.9, up_mm: 104 },
    });
    expect(sheets).toEqual([]);
    expect(problems.map(problemLine)).toEqual([
      "correction.measured_mm: expected 97 to 103 each, got '96.9 across and 104 up' (print at actual size, not fitted to the page)",
    ]);
  });

  it('say on every page that they are not for a car where the window has no source', () => {
    const pieces = all.slice(0, 8).flatMap(({ panel }) => piecesOf(panel));
    const pages = svgOf(pieces, { isExample: true });
    expect(pages.length).toBeGreaterThan(2);
    for (const { texts } of pages) expect(texts.map(({ text }) => text)).toContain(NOT_FOR_A_CAR);
    for (const { texts } of svgOf(pieces)) expect(texts.map(({ text }) => text)).not.toContain(NOT_FOR_A_CAR);
  });

  it('are refused where a bed is too small for a piece or for the rulers', () => {
    const pieces = piecesOf(panelOf({ mouth_width_mm: 250, mouth_height_mm: 200 }, {}));
    const problemsOn = (width_mm: number, height_mm: number): string[] =>
      layOut(pieces, { ...FRAME, bed: { paper: null, width_mm, height_mm } }).problems.map(problemLine);
    expect(problemsOn(200, 200)).toEqual([
      expect.stringMatching(/^bed: expected room for a piece of .*larger bed/),
    ]);
    expect(problemsOn(100, 200)).toEqual(['bed.width_mm: expected 160 to 5000, got 100']);
  });
});

describe('a piece that is turned', () => {
  const [piece] = piecesOf(panelOf(MOUTHS.traced!, {}, { blanking_pct: 100 })) as [Piece];
  const bare = (piece: Piece, width_mm: number, height_mm: number): Sheet => {
    const [sheet] = layOut([piece], { ...FRAME, bed: { paper: null, width_mm, height_mm } }).sheets;
    return { ...sheet!, frame: drawn() };
  };
  const upright = bare(piece, 600, 400);
  const lying = bare({ ...piece, width_mm: 400 }, 200, 600); // nothing so wide fits upright

  /** Cuts, marks and feet of the lettering from the corner of their box on, turned back by a quarter where y is upwards or not. */
  function placesOf({ strokes, texts }: Pick<ReadSheet, 'strokes' | 'texts'>, turns: -1 | 0 | 1): Polygon {
    const back = ({ x, y }: { x: number; y: number }): { x: number; y: number } =>
      turns === 0 ? { x, y } : { x: turns * y, y: -turns * x };
    const all = [...strokes.flatMap(({ polygon }) => polygon), ...texts].map(back);
    const { left, low } = boundsOf([all]);
    return all.map(({ x, y }) => ({ x: x - left, y: y - low }));
  }

  it.each([
    ['SVG', -1, (sheet: Sheet) => readCutSvg(sheetSvg(sheet))],
    ['DXF', 1, (sheet: Sheet) => readCutDxf(sheetDxf(sheet))],
  ] as const)('is the same piece, turned back, lettering too: %s', (_name, turns, read) => {
    const [as, turned] = [read(upright), read(lying)] as [ReadSheet, ReadSheet];
    const [from, to] = [placesOf(as, 0), placesOf(turned, turns)];
    expect(to).toHaveLength(from.length);
    from.forEach(({ x, y }, i) => expect(Math.hypot(x - to[i]!.x, y - to[i]!.y)).toBeLessThan(0.001));
    expect(turned.texts.map(({ text }) => text)).toEqual(as.texts.map(({ text }) => text));
    expect(as.texts.some(({ isTurned }) => isTurned)).toBe(false);
    expect(turned.texts.every(({ isTurned }) => isTurned)).toBe(true);
  });
});

describe('a piece larger than the page', () => {
  const edge = [corner(0, 0), corner(390, 0), corner(390, 350), corner(0, 350)];
  const piece = pieceOf({ plate: { edge, openings: [], holes: [] }, words: WORDS, kerf_mm: 0 });
  const pages = layOut([piece], FRAME).sheets;

  it('is shown on several, all of it', () => {
    expect(pages.length).toBe(6);
    expect(pages.every(({ isPart }) => isPart)).toBe(true);
    const windows = pages.map(({ room, content }) => {
      const box = boxOf([content.strokes.find(({ layer }) => layer === 'CUT')!.path]);
      const at = (x: number, y: number): { x: number; y: number } => ({
        x: x - box.left_mm,
        y: y - box.bottom_mm,
      });
      return [
        at(room.left_mm, room.bottom_mm),
        at(room.right_mm, room.bottom_mm),
        at(room.right_mm, room.top_mm),
        at(room.left_mm, room.top_mm),
      ];
    });
    const plate = edge.map(({ x_mm, y_mm }) => ({ x: x_mm, y: y_mm }));
    expect(Clipper.areaPathsD(Clipper.differenceD([plate], windows, FillRule.NonZero, 3))).toBe(0);
  });

  it('has its parts cut off at the margins and crosses that meet when they are laid on one another', () => {
    const svg = pages.map(sheetSvg);
    for (const text of svg) expect(text).toMatch(/clip-path="url\(#(sheet-[\w-]+)\)"[^]*/);
    const crosses = pages.map(({ content }) => {
      const { left_mm, bottom_mm } = boxOf([content.strokes.find(({ layer }) => layer === 'CUT')!.path]);
      const middles = content.strokes
        .filter(({ layer }) => layer === 'RULER')
        .map(({ path: [a, b] }) => [(a!.x_mm + b!.x_mm) / 2 - left_mm, (a!.y_mm + b!.y_mm) / 2 - bottom_mm]);
      return [...new Set(middles.map(([x, y]) => `${x!.toFixed(3)} ${y!.toFixed(3)}`))];
    });
    for (const page of crosses) expect(page.length).toBeGreaterThanOrEqual(4);
    for (const cross of crosses.flat()) {
      expect(crosses.filter((page) => page.includes(cross)).length).toBeGreaterThanOrEqual(2);
    }
  });
});

describe('a sheet as DXF', () => {
  const { sheets } = layOut(piecesOf(panelOf(MOUTHS.oval!, { blank: 'slots' })), { ...FRAME, bed: BED });
  const dxf = sheetDxf(sheets[0]!);
  const read = readCutDxf(dxf);

  it('is in millimetres and has a layer each for cuts, marks, rulers and lettering', () => {
    expect(read.units).toBe(4);
    expect(read.layers).toEqual(expect.arrayContaining(['CUT', 'MARK', 'RULER', 'TEXT']));
    expect(new Set(read.strokes.map(({ layer }) => layer))).toEqual(new Set(['CUT', 'MARK', 'RULER']));
    expect(new Set(read.texts.map(({ layer }) => layer))).toEqual(new Set(['TEXT']));
    expect(read.strokes.filter(({ layer }) => layer === 'CUT').every(({ isClosed }) => isClosed)).toBe(true);
  });

  it('says what the SVG says, in ASCII', () => {
    const svg = readCutSvg(sheetSvg(sheets[0]!));
    const unescaped = svg.texts.map(({ text }) => text.replace(/&amp;/g, '&'));
    expect(read.texts.map(({ text }) => text).sort()).toEqual(unescaped.sort());
    expect(dxf).toMatch(/^[\x20-\x7e\r\n]*$/);
  });

  it('is the same bytes for the same sheet', () => {
    expect(sheetDxf(sheets[0]!)).toBe(dxf);
  });

  it('escapes what is not ASCII and survives a title with a line end', () => {
    const odd = layOut(piecesOf(panelOf(MOUTHS.round!, {})), { ...FRAME, title: 'Zürich\n999' }).sheets[0]!;
    expect(sheetDxf(odd)).toContain('Z\\U+00FCrich 999, sheet 1 of 1');
    expect(readCutDxf(sheetDxf(odd)).units).toBe(4);
  });
});

/** Whoever prints larger has less to draw on: margins are of the paper. */
function expectInside({ strokes, texts, scale: [across, up], viewBox }: ReadSheet): void {
  const [width, height] = [viewBox[2]!, viewBox[3]!];
  const points = [
    ...strokes.flatMap(({ polygon }) => polygon),
    ...texts.map(({ x, y }) => ({ x, y })),
    ...texts.map(({ x, y, size, text, anchor, isTurned }) => {
      const length = text.length * size * (anchor === 'start' ? 0.5 : 0.25);
      return isTurned ? { x, y: y - length } : { x: x + length, y };
    }),
  ];
  const { left, right, low, high } = boundsOf([points]);
  expect(left * across).toBeGreaterThanOrEqual(10 - 1e-3);
  expect(low * up).toBeGreaterThanOrEqual(10 - 1e-3);
  expect(right * across).toBeLessThanOrEqual(width - 10 + 1e-3);
  expect(high * up).toBeLessThanOrEqual(height - 10 + 1e-3);
}

function expectApart({ strokes }: ReadSheet): void {
  const plates = outlines(onLayer(strokes, 'CUT'));
  for (const [i, a] of plates.entries()) {
    for (const b of plates.slice(i + 1)) {
      expect(Clipper.areaPathsD(Clipper.intersectD([a], [b], FillRule.NonZero, 4))).toBe(0);
    }
  }
}
