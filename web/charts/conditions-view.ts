/** Where everything of the map of conditions lies: one condition across, another down, a panel to every cell. Pure. */
import { contours } from 'd3-contour';
import type { MapCell, MapCorner, PlannedPanel } from '../../engine/index.ts';
import type { Box } from './place-labels.ts';

export interface CellPlace {
  row: number;
  column: number;
}

export interface ConditionsView {
  frame: Box;
  columns: number;
  rows: number;
  /** As paths of an SVG drawing. */
  inside: string;
  tooHot: string;
  tooCold: string;
  /** Cells in which some blanking stays in, but no panel of the set. */
  noPanel: string;
  /** Between cells that take different panels. */
  borders: string;
  /** One for each panel, and for each reason why there is none, where most of its cells are. */
  letters: { x: number; y: number; text: string; isPanel: boolean }[];
  /** Place in the set by row and column; null where none of it stays in. */
  fits: (number | null)[][];
}

/** An endless margin, as a number that can be drawn between [K] */
const ENDLESS_K = 1000;
/** A letter of a text in the map, with its share of the room around it. */
const LETTER_PX = 9;
const LEFT_PX = 78;
const TOP_PX = 8;
const FOOT_PX = 28;

export const heightOfMap = (rows: number): number => TOP_PX + FOOT_PX + rows * (rows > 2 ? 34 : 64);

export function conditionsView(
  corner: MapCorner,
  panels: readonly PlannedPanel[],
  width: number,
): ConditionsView {
  const rows = corner.rows.length;
  const columns = corner.rows[0]?.length ?? 0;
  const height = heightOfMap(rows) - TOP_PX - FOOT_PX;
  const frame = { left: LEFT_PX, top: TOP_PX, width: Math.max(1, width - LEFT_PX - 2), height };
  const [cellWidth, cellHeight] = [frame.width / columns, frame.height / rows];
  const fits = corner.rows.map((cells) => cells.map(({ fit }) => fit));
  const x = (column: number): number => frame.left + column * cellWidth;
  const y = (row: number): number => frame.top + row * cellHeight;
  const pathOf = (margin: (cell: MapCell) => number): string =>
    areaPath(corner.rows, margin, { left: frame.left, top: frame.top, cellWidth, cellHeight });
  return {
    frame,
    columns,
    rows,
    inside: pathOf((cell) => Math.min(hot(cell), cold(cell))),
    tooHot: pathOf((cell) => -hot(cell)),
    tooCold: pathOf((cell) => -cold(cell)),
    noPanel: cellsWhere(
      corner.rows,
      ({ span_pct }, row, column) => span_pct !== null && fits[row]?.[column] === null,
    )
      .map(({ row, column }) => `M${x(column)} ${y(row)}H${x(column + 1)}V${y(row + 1)}H${x(column)}Z`)
      .join(''),
    borders: bordersOf(fits, x, y),
    letters: lettersOf(corner.rows, fits, panels).map(({ text, isPanel, row, column }) => ({
      text,
      isPanel,
      x: within(x(column + 0.5), text.length * LETTER_PX, frame),
      y: y(row + 0.5) + (isPanel ? 7 : 5),
    })),
    fits,
  };
}

/** Where the middle of a text stands that does not leave the frame. */
function within(middle: number, width: number, { left, width: whole }: Box): number {
  const half = Math.min(width, whole) / 2;
  return Math.min(left + whole - half, Math.max(left + half, middle));
}

const bounded = (margin_K: number): number => Math.max(-ENDLESS_K, Math.min(ENDLESS_K, margin_K));
const hot = ({ best }: MapCell): number => (best ? bounded(best.hotMargin_K) : -1);
const cold = ({ best }: MapCell): number => (best ? bounded(best.coldMargin_K) : -1);

interface Grid {
  left: number;
  top: number;
  cellWidth: number;
  cellHeight: number;
}

/** Where a margin is at least 0. It stands at the middles of cells, and the outermost reach half a cell further. */
function areaPath(
  rows: readonly (readonly MapCell[])[],
  margin: (cell: MapCell) => number,
  grid: Grid,
): string {
  const padded = <T>(list: readonly T[]): T[] => [...list.slice(0, 1), ...list, ...list.slice(-1)];
  const field = padded(rows).map((cells) => padded(cells).map(margin));
  const size: [number, number] = [field[0]?.length ?? 0, field.length];
  const inner = ([x = 0, y = 0]: number[]): string => {
    const column = Math.min(size[0] - 2, Math.max(0, x - 1));
    const row = Math.min(size[1] - 2, Math.max(0, y - 1));
    return `${(grid.left + column * grid.cellWidth).toFixed(1)} ${(grid.top + row * grid.cellHeight).toFixed(1)}`;
  };
  const { coordinates } = contours().size(size).contour(field.flat(), 0);
  return coordinates
    .flat()
    .map((ring) => `M${ring.map(inner).join('L')}Z`)
    .join('');
}

function bordersOf(
  fits: readonly (readonly (number | null)[])[],
  x: (column: number) => number,
  y: (row: number) => number,
): string {
  let path = '';
  fits.forEach((cells, row) =>
    cells.forEach((fit, column) => {
      if (column > 0 && cells[column - 1] !== fit) path += `M${x(column)} ${y(row)}V${y(row + 1)}`;
      if (row > 0 && fits[row - 1]?.[column] !== fit) path += `M${x(column)} ${y(row)}H${x(column + 1)}`;
    }),
  );
  return path;
}

const WHY: Record<NonNullable<MapCell['why']>, string> = {
  'hot when open': 'too hot',
  'cold when closed': 'too cold',
  swing: 'hot and cold',
  'not judged': 'not judged',
};

/** What is written on a cell: its panel, or why it takes none. */
function textOf({ why }: MapCell, fit: number | null, panels: readonly PlannedPanel[]): string {
  if (fit !== null) return panels[fit]?.letter || 'open';
  return why ? WHY[why] : 'no panel';
}

/** Each text in the cell of those that bear it that is nearest to the middle of them all. */
function lettersOf(
  rows: readonly (readonly MapCell[])[],
  fits: readonly (readonly (number | null)[])[],
  panels: readonly PlannedPanel[],
): (CellPlace & { text: string; isPanel: boolean })[] {
  const texts = rows.map((cells, r) => cells.map((cell, c) => textOf(cell, fits[r]?.[c] ?? null, panels)));
  return [...new Set(texts.flat())].map((text) => {
    const cells = cellsWhere(rows, (_, row, column) => texts[row]?.[column] === text);
    const mean = (key: keyof CellPlace): number =>
      cells.reduce((sum, cell) => sum + cell[key], 0) / cells.length;
    const [row, column] = [mean('row'), mean('column')];
    const far = (cell: CellPlace): number => Math.hypot(cell.row - row, cell.column - column);
    const at = cells.reduce((best, cell) => (far(cell) < far(best) ? cell : best));
    return { ...at, text, isPanel: fits[at.row]?.[at.column] !== null };
  });
}

const cellsWhere = (
  rows: readonly (readonly MapCell[])[],
  is: (cell: MapCell, row: number, column: number) => boolean,
): CellPlace[] =>
  rows.flatMap((cells, row) =>
    cells.flatMap((cell, column) => (is(cell, row, column) ? [{ row, column }] : [])),
  );

/** Where an arrow key takes the cell in hand; null for any other key. */
export function movedCell(
  { row, column }: CellPlace,
  key: string,
  { rows, columns }: Pick<ConditionsView, 'rows' | 'columns'>,
): CellPlace | null {
  const to = (r: number, c: number): CellPlace => ({
    row: Math.min(rows - 1, Math.max(0, r)),
    column: Math.min(columns - 1, Math.max(0, c)),
  });
  if (key === 'ArrowLeft') return to(row, column - 1);
  if (key === 'ArrowRight') return to(row, column + 1);
  if (key === 'ArrowUp') return to(row - 1, column);
  if (key === 'ArrowDown') return to(row + 1, column);
  if (key === 'Home') return to(row, 0);
  return key === 'End' ? to(row, columns - 1) : null;
}
