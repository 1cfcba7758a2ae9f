/** The same blanking in tape: the mouth 1:1 with its strips numbered in the order of laying, and what to cut off the roll. */

import { ARROWS, arrows, isOutLeftOf } from './arrow.ts';
import { closed, drawn, line, mirrored, moved, textWidth_mm, type Drawing } from './drawing.ts';
import { boxOf, heightOf, polygonLoop, widthOf } from './path.ts';
import type { Piece } from './piece.ts';
import type { Point } from './side.ts';
import {
  firstEdge_mm,
  FOLD_MM,
  HOLD_MM,
  placeOf,
  tapeStrips,
  type TapeLaying,
  type TapeStrip,
} from './tape-strips.ts';

export interface TapeWish extends TapeLaying {
  side: 'left' | 'right';
  /** What the plan asks for, and what so many strips cover. */
  asked_pct: number;
  covered_pct: number;
  /** The panel that this is done instead of: "B, front, 60 %". */
  insteadOf: string;
}

const LINE_MM = 3.7;
/** Between the plan and its words, and the arrows that stand higher than these [mm] */
const UNDER_MM = 6;
const LETTER_MM = 2.5;

/** For `layOut`, on a sheet with the cautions of tape. */
export function tapePiece(wish: TapeWish): Piece {
  const strips = tapeStrips(wish);
  const right = drawn(
    { strokes: [closed('MARK', wish.mouth)] },
    ...strips.map((strip) => stripDrawing(strip, wish)),
  );
  const plan = wish.side === 'right' ? right : mirrored(right);
  const around = boxOf(plan.strokes.map(({ path }) => path));
  const lines = linesOf(strips, wish);
  const below_mm = lines.length * LINE_MM + UNDER_MM;
  const lineAt_mm = (i: number): number => (lines.length - i - 1) * LINE_MM + 1;
  const words = lines.map((text, i) => ({
    text,
    at: { x_mm: 0, y_mm: lineAt_mm(i) },
    height_mm: LETTER_MM,
    anchor: 'start' as const,
  }));
  const besideFirst_mm = Math.max(...lines.slice(0, 2).map((text) => textWidth_mm(text, LETTER_MM)));
  const foot = { x_mm: besideFirst_mm + ARROWS.width_mm / 2, y_mm: lineAt_mm(1) };
  const pointers = arrows(foot, isOutLeftOf(wish.side));
  return {
    drawing: drawn(moved(plan, { x_mm: -around.left_mm, y_mm: below_mm - around.bottom_mm }), pointers, {
      letters: words,
    }),
    width_mm: Math.max(
      widthOf(around),
      besideFirst_mm + ARROWS.width_mm,
      ...lines.map((text) => textWidth_mm(text, LETTER_MM)),
    ),
    height_mm: below_mm + heightOf(around),
  };
}

function linesOf(strips: readonly TapeStrip[], wish: TapeWish): string[] {
  const { insteadOf, asked_pct, covered_pct, strip_mm, overlap_mm, side, from } = wish;
  const edge = from === 'top' || from === 'bottom' ? `${from} edge` : `${from} side`;
  return [
    `Tape instead of ${insteadOf}, ${side}`,
    `${strips.length} strips of ${mm(strip_mm)} cover ${pct(covered_pct)} (asked ${pct(asked_pct)})`,
    `Outside of the mouth, from the ${edge}, in the order of the numbers,`,
    overlap_mm > 0 ? `each ${mm(overlap_mm)} over the one before` : 'edge to edge',
    ...strips.map((strip) => stripLine(strip)),
    `${HOLD_MM} mm on the body at both ends; fold the last ${FOLD_MM} mm on itself: the tab to pull`,
  ];
}

const stripLine = ({ number, start_mm, end_mm, length_mm, isTrimmed }: TapeStrip): string =>
  `${number}: cut ${Math.ceil(length_mm)} mm, lay from ${mm(start_mm)} to ${mm(end_mm)}${isTrimmed ? ', cut at the far rim' : ''}`;

const mm = (value: number): string => `${Math.round(value * 10) / 10} mm`;
const pct = (value: number): string => `${Math.round(value * 10) / 10} %`;

/** The strip, the line where its end is folded, its number and what to do with the end. */
function stripDrawing(strip: TapeStrip, { mouth, from }: TapeWish): Drawing {
  const edge_mm = firstEdge_mm(mouth, from);
  const at = (deep_mm: number, along_mm: number): Point =>
    placeOf(from, { deep_mm: edge_mm + deep_mm, along_mm });
  const low = strip.low_mm - HOLD_MM;
  const fold = strip.high_mm + HOLD_MM;
  const high = fold + FOLD_MM / 2; // folded on itself, half of it stands out
  const middle_mm = (strip.start_mm + strip.end_mm) / 2;
  const corners = [
    at(strip.start_mm, low),
    at(strip.end_mm, low),
    at(strip.end_mm, high),
    at(strip.start_mm, high),
  ];
  const folded = [at(strip.start_mm, fold), at(strip.end_mm, fold)].map((p) => [p.x_mm, p.y_mm] as const);
  const middle = at(middle_mm, (strip.low_mm + strip.high_mm) / 2);
  const tab = at(middle_mm, fold + FOLD_MM / 4);
  return {
    strokes: [closed('MARK', polygonLoop(corners)), line('MARK', ...folded)],
    letters: [
      { text: String(strip.number), at: below(middle, 7), height_mm: 7, anchor: 'middle' },
      { text: 'PULL', at: below(tab, 2.5), height_mm: 2.5, anchor: 'middle' },
    ],
  };
}

const below = ({ x_mm, y_mm }: Point, height_mm: number): Point => ({ x_mm, y_mm: y_mm - height_mm / 2 });
