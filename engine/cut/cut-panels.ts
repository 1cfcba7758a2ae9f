/** A whole order: panels of a set, for both corners of an axle or one, drawn and laid out; or what is wrong with it. */

import { problem, type Problem } from '../scenario/problem.ts';
import type { PanelWords } from './face.ts';
import type { FrameWish } from './frame.ts';
import { drawPanel, type Panel } from './panel.ts';
import { pieceOf, type Piece } from './piece.ts';
import { layOut, type Sheets } from './sheets.ts';
import type { PanelWish } from './wish.ts';

export interface PanelOrder {
  wish: PanelWish;
  words: Omit<PanelWords, 'side' | 'blanking_pct'>;
  sides: readonly PanelWords['side'][];
}

export interface CutOrder {
  panels: readonly PanelOrder[];
  kerf_mm: number;
  frame: FrameWish;
}

/** A wider cut is no cut for a panel (common practice, no source) [mm] */
const MOST_KERF_MM = 3;

/** No sheet where anything is wrong; all that is wrong at once. */
export function cutPanels({ panels, kerf_mm, frame }: CutOrder): Sheets {
  const drawn = panels.map((order) => ({ order, panel: drawPanel(order.wish) }));
  const problems = [
    ...kerfProblems(kerf_mm),
    ...drawn.flatMap(({ order, panel }) => namedProblems(order, panel)),
  ];
  const bare = layOut([], frame); // what is wrong with bed and correction
  if (problems.length + bare.problems.length > 0)
    return { sheets: [], problems: [...problems, ...bare.problems] };
  return layOut(
    drawn.flatMap(({ order, panel }) => piecesOf(order, panel, kerf_mm)),
    frame,
  );
}

const kerfProblems = (kerf_mm: number): Problem[] =>
  kerf_mm >= 0 && kerf_mm <= MOST_KERF_MM ? [] : [problem('kerf_mm', kerf_mm, `0 to ${MOST_KERF_MM}`)];

/** "panel C front.corner_mm" */
const namedProblems = ({ words }: PanelOrder, panel: Panel): Problem[] =>
  panel.problems.map((one) => ({
    ...one,
    key: one.key.replace('panel', `panel ${words.letter} ${words.axle}`),
  }));

const piecesOf = ({ wish, words, sides }: PanelOrder, panel: Panel, kerf_mm: number): Piece[] =>
  sides.flatMap((side) =>
    panel.plates.map((plate) =>
      pieceOf({ plate, words: { ...words, side, blanking_pct: wish.blanking_pct }, kerf_mm }),
    ),
  );
