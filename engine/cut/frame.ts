/** Everything of a sheet but its pieces: head, cautions, rulers; and the room that they leave. */

import { MARGIN_MM, sizeOf, type Bed } from './bed.ts';
import { cautionsFor, type CautionFor } from './cautions.ts';
import { correctionWords, isCorrected, scaleOf, type Correction } from './correction.ts';
import { drawn, fittingHeight_mm, type Drawing, type Lettering } from './drawing.ts';
import { MEASURE_WORDS, rulers } from './ruler.ts';
import type { Box } from './side.ts';

export interface FrameWish {
  bed: Bed;
  correction: Correction;
  title: string;
  /** Whether the window has no source. */
  isExample: boolean;
  cautions: CautionFor;
}

/** Where everything must stay, in what is drawn: a printer that prints large has less room. */
function insideMargins({ bed, correction }: Pick<FrameWish, 'bed' | 'correction'>): Box {
  const { width_mm, height_mm } = sizeOf(bed);
  const { across, up } = scaleOf(correction);
  return {
    left_mm: MARGIN_MM / across,
    right_mm: (width_mm - MARGIN_MM) / across,
    bottom_mm: MARGIN_MM / up,
    top_mm: (height_mm - MARGIN_MM) / up,
  };
}

const TITLE_MM = 3.5;
const LINE_MM = 2.5;
/** From base line to base line. */
const LEADING_MM = 3.8;
const SEEN = "Drawn as seen from the front of the car; left and right are the driver's.";
/** What the rulers and their words take, at the foot and at the left [mm] */
const FOOT_MM = 18;
const LEFT_MM = 8;

/** What the frame leaves for pieces. */
export function roomIn(wish: FrameWish): Box {
  const inside = insideMargins(wish);
  const head_mm = TITLE_MM + 2 + headLines(wish).length * LEADING_MM + 1;
  return {
    left_mm: inside.left_mm + LEFT_MM,
    right_mm: inside.right_mm,
    bottom_mm: inside.bottom_mm + FOOT_MM,
    top_mm: inside.top_mm - head_mm,
  };
}

/** The correction's place comes first, and stays free where a sheet goes out without it. */
const headLines = ({ isExample, cautions, correction }: FrameWish): string[] => [
  ...(isCorrected(correction) ? [''] : []),
  SEEN,
  ...cautionsFor(cautions, isExample),
];

/** `number` is "1 of 3", or what else tells this sheet from the others. */
export function frameOf(wish: FrameWish, number: string): Drawing {
  const { left_mm, right_mm, bottom_mm, top_mm } = insideMargins(wish);
  const title = writtenOn(wish, `${wish.title}, sheet ${number}`, top_mm, TITLE_MM);
  const lines = headLines(wish).flatMap((text, i) => (text ? [headLine(wish, text, i)] : []));
  const corner = { x_mm: left_mm + 5.5, y_mm: bottom_mm + 9 };
  const measure = measureWords(corner.x_mm, corner.y_mm, right_mm - left_mm);
  return drawn({ letters: [title, ...lines, measure] }, rulers(corner));
}

/** That what is printed is corrected: what is saved is not. */
export const correctionNote = (wish: FrameWish): Drawing =>
  drawn({
    letters: isCorrected(wish.correction) ? [headLine(wish, correctionWords(wish.correction), 0)] : [],
  });

const headLine = (wish: FrameWish, text: string, i: number): Lettering =>
  writtenOn(wish, text, insideMargins(wish).top_mm - TITLE_MM - 2 - i * LEADING_MM, LINE_MM);

function writtenOn(wish: FrameWish, text: string, top_mm: number, wanted_mm: number): Lettering {
  const { left_mm, right_mm } = insideMargins(wish);
  const height_mm = fittingHeight_mm(text, right_mm - left_mm, wanted_mm);
  return { text, at: { x_mm: left_mm, y_mm: top_mm - height_mm }, height_mm, anchor: 'start' };
}

/** Over the ruler that lies, so that who measures reads it. */
const measureWords = (x_mm: number, y_mm: number, width_mm: number): Lettering => ({
  text: MEASURE_WORDS,
  at: { x_mm: x_mm + 3, y_mm: y_mm + 2.5 },
  height_mm: fittingHeight_mm(MEASURE_WORDS, width_mm - 12, 3.5),
  anchor: 'start',
});
