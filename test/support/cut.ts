/** Mouths, panels and sheets for the tests of what is cut; measures of polygons that owe nothing to the engine. */

import { drawPanel, type Panel } from '../../engine/cut/panel.ts';
import { pieceOf, type Piece } from '../../engine/cut/piece.ts';
import { UNCORRECTED } from '../../engine/cut/correction.ts';
import type { PanelWords } from '../../engine/cut/face.ts';
import type { FrameWish } from '../../engine/cut/frame.ts';
import type { PanelWish } from '../../engine/cut/wish.ts';
import { blankFor, blankOf } from '../../engine/duct/blank.ts';
import { mouthOutline } from '../../engine/duct/mouth-outline.ts';
import type { Polygon } from './read-cut-svg.ts';

type MouthKeys = Parameters<typeof mouthOutline>[0];
type BlankKeys = Parameters<typeof blankOf>[0];

export const MOUTHS: Record<string, MouthKeys> = {
  rectangle: { mouth_width_mm: 120, mouth_height_mm: 80 },
  'rounded rectangle': {
    mouth_shape: 'rounded rectangle',
    mouth_width_mm: 120,
    mouth_height_mm: 90,
    mouth_corner_mm: 15,
  },
  round: { mouth_shape: 'round', mouth_width_mm: 98, mouth_height_mm: 98 },
  oval: { mouth_shape: 'oval', mouth_width_mm: 140, mouth_height_mm: 80 },
  traced: {
    mouth_shape: 'outline',
    mouth_width_mm: 130,
    mouth_height_mm: 95,
    mouth_outline_mm: [
      [0, 10],
      [30, 0],
      [90, 2],
      [130, 20],
      [128, 70],
      [100, 95],
      [60, 90],
      [8, 80],
      [2, 40],
    ],
  },
};

export const BLANKS: BlankKeys[] = [
  { blank: 'edge', blank_from: 'outboard' },
  { blank: 'edge', blank_from: 'bottom' },
  { blank: 'hole' },
  { blank: 'slots', blank_from: 'outboard' },
  { blank: 'perforated' },
];

export function wishOf(mouthKeys: MouthKeys, blankKeys: BlankKeys, more: Partial<PanelWish> = {}): PanelWish {
  const mouth = mouthOutline(mouthKeys);
  const blank = blankOf(blankKeys);
  return {
    mouth,
    coveredAt: (pct) => blankFor(mouth, blank, pct),
    blanking_pct: 60,
    hold: 'tabs',
    fastener: 'M4',
    corner_mm: 3,
    hose_mm: 60,
    ...more,
  };
}

export const panelOf = (mouthKeys: MouthKeys, blankKeys: BlankKeys, more: Partial<PanelWish> = {}): Panel =>
  drawPanel(wishOf(mouthKeys, blankKeys, more));

export const WORDS: PanelWords = {
  letter: 'C',
  axle: 'front',
  side: 'left',
  blanking_pct: 60,
  mouth: 'rectangle, 120 x 80 mm',
  made: 'tabs,M4,3',
  date: '2031-05-04',
  modelHash: '12ab 34cd',
  supersedes: '',
};

export const FRAME: FrameWish = {
  bed: { paper: 'A4' },
  correction: UNCORRECTED,
  title: 'Panels',
  isExample: false,
  cautions: 'cut',
};

export const piecesOf = (panel: Panel, words: Partial<PanelWords> = {}, kerf_mm = 0): Piece[] =>
  panel.plates.map((plate) => pieceOf({ plate, words: { ...WORDS, ...words }, kerf_mm }));

/** Without regard to the way it runs. */
export const areaOf = (polygon: Polygon): number =>
  Math.abs(
    polygon.reduce((sum, a, i) => {
      const b = polygon[(i + 1) % polygon.length]!;
      return sum + (a.x * b.y - b.x * a.y) / 2;
    }, 0),
  );

export function boundsOf(polygons: readonly Polygon[]): {
  left: number;
  right: number;
  low: number;
  high: number;
} {
  const points = polygons.flat();
  const [x, y] = [points.map((p) => p.x), points.map((p) => p.y)];
  return { left: Math.min(...x), right: Math.max(...x), low: Math.min(...y), high: Math.max(...y) };
}

/** The largest is the plate's edge, all others lie in it and are cut out. */
export function netArea(polygons: readonly Polygon[]): number {
  const areas = polygons.map(areaOf).sort((a, b) => b - a);
  return areas.slice(1).reduce((rest, area) => rest - area, areas[0] ?? 0);
}
