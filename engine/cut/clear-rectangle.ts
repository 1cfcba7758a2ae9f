/** The clear part of a plate that lettering goes on: an upright rectangle without an edge or a hole. */

import type { Size } from './nest.ts';
import { clearOf } from './offset.ts';
import { boxOf, heightOf, widthOf } from './path.ts';
import { cutsOf, type Plate } from './plate.ts';
import type { Box, Point } from './side.ts';

/** Between lettering and any edge [mm] */
const MARGIN_MM = 2;
const LEAST_CELL_MM = 2;
/** So many across the largest plate that a hole of 2 mm with its margin still shows in a corner of a cell. */
const MOST_CELLS = 120;

/** The places of a plate that are clear, found once. */
export interface ClearPlaces {
  box: Box;
  cell_mm: number;
  rows: number;
  columns: number;
  /** Row by row from below; one more of both than there are cells. */
  isClear: boolean[][];
}

export function clearPlaces(plate: Plate): ClearPlaces {
  const box = boxOf([plate.edge]);
  const cell_mm = Math.max(LEAST_CELL_MM, widthOf(box) / MOST_CELLS, heightOf(box) / MOST_CELLS);
  const [columns, rows] = [Math.floor(widthOf(box) / cell_mm), Math.floor(heightOf(box) / cell_mm)];
  const edges = clearOf(cutsOf(plate), MARGIN_MM).flatMap(edgesOf);
  const isClear = Array.from({ length: rows + 1 }, (_, row) =>
    crossed(edges, box, { y_mm: box.bottom_mm + row * cell_mm, columns, cell_mm }),
  );
  return { box, cell_mm, rows, columns, isClear };
}

/** The clear rectangle in which something of a size can be largest, of those where it can be whole the largest; null: none. */
export function clearRectangle(places: ClearPlaces, wanted: Size, taken: readonly Box[]): Box | null {
  const { box, cell_mm, rows, columns, isClear } = places;
  const cellAt = (row: number, column: number): Box => ({
    left_mm: box.left_mm + column * cell_mm,
    right_mm: box.left_mm + (column + 1) * cell_mm,
    bottom_mm: box.bottom_mm + row * cell_mm,
    top_mm: box.bottom_mm + (row + 1) * cell_mm,
  });
  const isFree = (row: number, column: number): boolean =>
    [0, 1].every((up) => [0, 1].every((right) => isClear[row + up]![column + right]!)) &&
    !taken.some((other) => overlap(cellAt(row, column), other));
  const best = bestBlock({ cell_mm, rows, columns, isFree }, wanted);
  if (!best) return null;
  const [low, high] = [
    cellAt(best.row, best.column),
    cellAt(best.row + best.height - 1, best.column + best.width - 1),
  ];
  return { left_mm: low.left_mm, bottom_mm: low.bottom_mm, right_mm: high.right_mm, top_mm: high.top_mm };
}

const overlap = (a: Box, b: Box): boolean =>
  a.left_mm < b.right_mm && b.left_mm < a.right_mm && a.bottom_mm < b.top_mm && b.bottom_mm < a.top_mm;

type Edge = readonly [Point, Point];

const edgesOf = (polygon: readonly Point[]): Edge[] =>
  polygon.map((a, i) => [a, polygon[(i + 1) % polygon.length]!]);

/** Which places of a row lie inside of polygons: after an odd number of edges. */
function crossed(
  edges: readonly Edge[],
  box: Box,
  row: { y_mm: number; columns: number; cell_mm: number },
): boolean[] {
  const y = row.y_mm + 1e-7; // never through a corner
  const at = edges
    .filter(([a, b]) => a.y_mm > y !== b.y_mm > y)
    .map(([a, b]) => a.x_mm + ((y - a.y_mm) / (b.y_mm - a.y_mm)) * (b.x_mm - a.x_mm));
  return Array.from({ length: row.columns + 1 }, (_, column) => {
    const x = box.left_mm + column * row.cell_mm;
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
  cell_mm: number;
  rows: number;
  columns: number;
  isFree: (row: number, column: number) => boolean;
}

/** The block of free cells that is worth most. */
function bestBlock({ cell_mm, rows, columns, isFree }: Cells, wanted: Size): Block | null {
  let best: Block | null = null;
  let most = 0;
  const deep = new Array<number>(columns).fill(0);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++)
      deep[column] = isFree(row, column) ? deep[column]! + 1 : 0;
    for (const block of blocksOver(deep, row)) {
      const value = worth(block, cell_mm, wanted);
      if (value > most) [best, most] = [block, value];
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
function worth({ width, height }: Block, cell_mm: number, wanted: Size): number {
  const [wide_mm, high_mm] = [width * cell_mm, height * cell_mm];
  const scale = Math.min(1, wide_mm / wanted.width_mm, high_mm / wanted.height_mm);
  const useful = Math.min(wide_mm, ENOUGH.width_mm) * Math.min(high_mm, ENOUGH.height_mm);
  return 1e6 * scale + useful + 1e-3 * width * height;
}

/** More than this is of no use to the lettering of a panel [mm] */
const ENOUGH = { width_mm: 70, height_mm: 50 };
