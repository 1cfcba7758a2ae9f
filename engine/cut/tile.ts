/** A piece that is larger than a page: shown through several windows that overlap, with crosses to lay on one another. */

import { line, type Stroke } from './drawing.ts';
import type { Size } from './nest.ts';
import type { Box, Point } from './side.ts';

/** How much of the piece two neighbours both show [mm] */
const OVERLAP_MM = 15;
const CROSS_MM = 8;

export interface Tile {
  /** Row from the top and column: "A1". */
  name: string;
  /** The part of the piece that it shows. */
  part: Box;
  /** In the piece's own coordinates; each lies in the overlap of two tiles or more. */
  crosses: Stroke[];
}

export function tilesOf(piece: Size, window: Size): Tile[] {
  const columns = starts(piece.width_mm, window.width_mm);
  const rows = starts(piece.height_mm, window.height_mm).reverse();
  const parts = rows.map((bottom_mm) => columns.map((left_mm) => partAt({ left_mm, bottom_mm }, window)));
  const seams = parts.flatMap((row, r) =>
    row.flatMap((part, c) => [
      ...(c > 0 ? seamAcross(row[c - 1]!, part) : []),
      ...(r > 0 ? seamUp(part, parts[r - 1]![c]!) : []),
    ]),
  );
  return parts.flatMap((row, r) =>
    row.map((part, c) => ({
      name: `${String.fromCharCode(65 + r)}${c + 1}`,
      part,
      crosses: seams.filter((at) => isWithin(at, part)).flatMap(cross),
    })),
  );
}

/** Where windows begin that show a length together, each over the end of the one before. */
function starts(length_mm: number, window_mm: number): number[] {
  const step_mm = window_mm - OVERLAP_MM;
  const count = Math.max(1, Math.ceil((length_mm - OVERLAP_MM) / step_mm));
  return Array.from({ length: count }, (_, i) => i * step_mm);
}

const partAt = (at: { left_mm: number; bottom_mm: number }, { width_mm, height_mm }: Size): Box => ({
  ...at,
  right_mm: at.left_mm + width_mm,
  top_mm: at.bottom_mm + height_mm,
});

/** Two points each, a quarter from the ends of the seam, so that a turned sheet shows. */
const seamAcross = (left: Box, right: Box): Point[] =>
  [0.25, 0.75].map((share) => ({
    x_mm: (right.left_mm + left.right_mm) / 2,
    y_mm: left.bottom_mm + share * (left.top_mm - left.bottom_mm),
  }));

const seamUp = (low: Box, high: Box): Point[] =>
  [0.25, 0.75].map((share) => ({
    x_mm: low.left_mm + share * (low.right_mm - low.left_mm),
    y_mm: (high.bottom_mm + low.top_mm) / 2,
  }));

const isWithin = ({ x_mm, y_mm }: Point, box: Box): boolean =>
  x_mm > box.left_mm && x_mm < box.right_mm && y_mm > box.bottom_mm && y_mm < box.top_mm;

const cross = ({ x_mm: x, y_mm: y }: Point): Stroke[] => [
  line('RULER', [x - CROSS_MM / 2, y], [x + CROSS_MM / 2, y]),
  line('RULER', [x, y - CROSS_MM / 2], [x, y + CROSS_MM / 2]),
];
