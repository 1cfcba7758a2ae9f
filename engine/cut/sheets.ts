/** Pieces on sheets: several to a page, one too large for a page on several. */

import type { Problem } from '../scenario/problem.ts';
import { problem } from '../scenario/problem.ts';
import { bedProblems, sizeOf } from './bed.ts';
import { correctionProblems, scaleOf, UNCORRECTED } from './correction.ts';
import { drawn, moved, type Drawing } from './drawing.ts';
import { correctionNote, frameOf, roomIn, type FrameWish } from './frame.ts';
import { fits, nested, turnedSize, type Size } from './nest.ts';
import { heightOf, widthOf } from './path.ts';
import { turnedPiece, type Piece } from './piece.ts';
import type { Box } from './side.ts';
import { tilesOf } from './tile.ts';

export interface Sheet {
  /** "1 of 3", or "2 of 3, part A1". */
  number: string;
  title: string;
  width_mm: number;
  height_mm: number;
  /** Everything is drawn so much larger, to come out true. */
  scale: { across: number; up: number };
  frame: Drawing;
  /** That it is corrected, and by how much; empty where it is not. */
  note: Drawing;
  /** Its pieces. */
  content: Drawing;
  /** Where pieces may be; those of a part are cut off by it. */
  room: Box;
  isPart: boolean;
}

export interface Sheets {
  /** None where there are problems. */
  sheets: Sheet[];
  problems: Problem[];
}

export function layOut(pieces: readonly Piece[], wish: FrameWish): Sheets {
  const problems = [...bedProblems(wish.bed), ...correctionProblems(wish.correction)];
  if (problems.length > 0) return { sheets: [], problems };
  const room = roomIn(wish);
  const page = { width_mm: widthOf(room), height_mm: heightOf(room) };
  const fitsPage = (piece: Size): boolean => fits(piece, page) || fits(turnedSize(piece), page);
  const large = pieces.filter((piece) => !fitsPage(piece));
  if (large.length > 0 && !wish.bed.paper)
    return { sheets: [], problems: large.map((piece) => tooLarge(piece, page)) };
  const contents = [
    ...shared(pieces.filter(fitsPage), page, room),
    ...large.flatMap((piece) => parts(piece, page, room)),
  ];
  return {
    sheets: contents.map((content, i) => sheetOf(content, `${i + 1} of ${contents.length}`, wish)),
    problems,
  };
}

const tooLarge = (piece: Size, page: Size): Problem =>
  problem('bed', sizeText(page), `room for a piece of ${sizeText(piece)}`, 'a larger bed?');

const sizeText = ({ width_mm, height_mm }: Size): string =>
  `${width_mm.toFixed(1)} x ${height_mm.toFixed(1)} mm`;

interface Content {
  drawing: Drawing;
  /** Of a piece that is larger than the page; empty: whole pieces. */
  part: string;
}

function shared(pieces: readonly Piece[], page: Size, room: Box): Content[] {
  const placed = nested(pieces, page);
  const pages = Math.max(0, ...placed.map((one) => one.page + 1));
  return Array.from({ length: pages }, (_, number) => {
    const here = placed.filter((one) => one.page === number);
    const drawings = here.map((one) => {
      const upright = pieces[one.piece]!;
      const { drawing } = one.isTurned ? turnedPiece(upright) : upright;
      return moved(drawing, { x_mm: room.left_mm + one.x_mm, y_mm: room.bottom_mm + one.y_mm });
    });
    return { drawing: drawn(...drawings), part: '' };
  });
}

/** Turned where that takes fewer pages. */
function parts(upright: Piece, page: Size, room: Box): Content[] {
  const isTurned = tilesOf(turnedSize(upright), page).length < tilesOf(upright, page).length;
  const piece = isTurned ? turnedPiece(upright) : upright;
  return tilesOf(piece, page).map(({ name, part, crosses }) => ({
    drawing: moved(drawn(piece.drawing, { strokes: crosses }), {
      x_mm: room.left_mm - part.left_mm,
      y_mm: room.bottom_mm - part.bottom_mm,
    }),
    part: name,
  }));
}

function sheetOf({ drawing, part }: Content, count: string, wish: FrameWish): Sheet {
  const number = part ? `${count}, part ${part}: lay crosses on crosses` : count;
  return {
    number,
    title: wish.title,
    ...sizeOf(wish.bed),
    scale: scaleOf(wish.correction),
    frame: frameOf(wish, number),
    note: correctionNote(wish),
    content: drawing,
    room: roomIn(wish),
    isPart: part !== '',
  };
}

/** The sheet without its correction: what a cutter gets. */
export const trueToSize = (sheet: Sheet): Sheet => ({
  ...sheet,
  width_mm: sheet.width_mm / sheet.scale.across,
  height_mm: sheet.height_mm / sheet.scale.up,
  scale: scaleOf(UNCORRECTED),
  note: drawn(),
});
