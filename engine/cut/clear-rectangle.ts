/** The clear part of a plate that lettering goes on: an upright rectangle without an edge or a hole. */

import type { Size } from './nest.ts';
import { clearOf } from './offset.ts';
import { boxOf, heightOf, widthOf } from './path.ts';
import { cutsOf, type Plate } from './plate.ts';
import type { Box, Point } from './side.ts';

/** Between lettering and any edge [mm] */
const MARGIN_MM = 2;
const CELL_MM = 2;

/** The places of a plate that are clear, found once. */
export interface ClearPlaces {
  box: Box;
  rows: number;
  columns: number;
  /** Row by row from below; one more of both than there are cells. */
  isClear: boolean[][];
}

export function clearPlaces(plate: Plate): ClearPlaces {
  const box = boxOf([plate.edge]);
  const [columns, rows] = [Math.floor(widthOf(box) / CELL_MM), Math.floor(heightOf(box) / CELL_MM)];
  const clear = clearOf(cutsOf(plate), MARGIN_MM);
  const isClear = Array.from({ length: rows + 1 }, (_, row) =>
    crossed(clear, box, { y_mm: box.bottom_mm + row * CELL_MM, columns }),
  );
  return { box, rows, columns, isClear };
}

/** The clear rectangle in which something of a size can be largest, of those where it can be whole the largest; null: none. */
export function clearRectangle(places: ClearPlaces, wanted: Size, taken: readonly Box[]): Box | null {
  const { box, rows, columns, isClear } = places;
  const cellAt = (row: number, column: number): Box => ({
    left_mm: box.left_mm + column * CELL_MM,
    right_mm: box.left_mm + (column + 1) * CELL_MM,
    bottom_mm: box.bottom_mm + row * CELL_MM,
    top_mm: box.bottom_mm + (row + 1) * CELL_MM,
  });
  const isFree = (row: number, column: number): boolean =>
    [0, 1].every((up) => [0, 1].every((right) => isClear[row + up]![column + right]!)) &&
    !taken.some((other) => overlap(cellAt(row, column), other));
  const best = bestBlock({ rows, columns, isFree }, wanted);
  if (!best) return null;
  const [low, high] = [
    cellAt(best.row, best.column),
    cellAt(best.row + best.height - 1, best.column + best.width - 1),
  ];
  return { left_mm: low.left_mm, bottom_mm: low.bottom_mm, right_mm: high.right_mm, top_mm: high.top_mm };
}

const overlap = (a: Box, b: Box): boolean =>
  a.left_mm < b.right_mm && b.left_mm < a.right_mm && a.bottom_mm < b.top_mm && b.bottom_mm < a.top_mm;

/** Which places of a row lie inside of polygons: after an odd number of edges. */
function crossed(polygons: readonly Point[][], box: Box, row: { y_mm: number; columns: number }): boolean[] {
  const y = row.y_mm + 1e-7; // never through a corner
  const edges = polygons.flatMap((polygon) =>
    polygon.map((a, i) => [a, polygon[(i + 1) % polygon.length]!] as const),
  );
  const at = edges
    .filter(([a, b]) => a.y_mm > y !== b.y_mm > y)
    .map(([a, b]) => a.x_mm + ((y - a.y_mm) / (b.y_mm - a.y_mm)) * (b.x_mm - a.x_mm));
  return Array.from({ length: row.columns + 1 }, (_, column) => {
    const x = box.left_mm + column * CELL_MM;
    return at.filter((crossing) => crossing < x).length % 2 === 1;
  });
}

interface Block {
  row: number;
  column: number;
  width: number;
  height: number;
}

interface Cells {
  rows: number;
  columns: number;
  isFree: (row: number, column: number) => boolean;
}

/** The block of free cells that is worth most. */
function bestBlock({ rows, columns, isFree }: Cells, wanted: Size): Block | null {
  let best: Block | null = null;
  const deep = new Array<number>(columns).fill(0);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++)
      deep[column] = isFree(row, column) ? deep[column]! + 1 : 0;
    for (const block of blocksOver(deep, row)) {
      if (!best || worth(block, wanted) > worth(best, wanted)) best = block;
    }
  }
  return best;
}

/** Those that end in a row: from each column to the right, as high as the lowest column allows. */
function* blocksOver(deep: readonly number[], row: number): Generator<Block> {
  for (let column = 0; column < deep.length; column++) {
    let height = deep[column]!;
    for (let end = column; end < deep.length && height > 0; end++) {
      height = Math.min(height, deep[end]!);
      if (height > 0) yield { row: row - height + 1, column, width: end - column + 1, height };
    }
  }
}

/** The scale at which the thing wanted fits, then the area as far as a panel's lettering has use for it. */
function worth({ width, height }: Block, wanted: Size): number {
  const [wide_mm, high_mm] = [width * CELL_MM, height * CELL_MM];
  const scale = Math.min(1, wide_mm / wanted.width_mm, high_mm / wanted.height_mm);
  const useful = Math.min(wide_mm, ENOUGH.width_mm) * Math.min(high_mm, ENOUGH.height_mm);
  return 1e6 * scale + useful + 1e-3 * width * height;
}

/** More than this is of no use to the lettering of a panel [mm] */
const ENOUGH = { width_mm: 70, height_mm: 50 };
