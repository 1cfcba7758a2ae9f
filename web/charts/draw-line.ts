import type { Point } from './columns.ts';
import type { ChartTheme } from './theme.ts';

/** Width of the strip of bare sheet on which every trace lies, or it drowns in the ruling; of a line of weight 1 [px] */
const CASING_PX = 5;

export interface Pen {
  colour: string;
  width: number;
  dash?: number[];
}

export const pens = { now: 2, thin: 1.2, pinned: 1.5, pinnedDash: [6, 4] } as const;

/** Of up to three pinned runs, each by its own. */
export const PINNED_DASHES = [pens.pinnedDash, [2, 3], [10, 3, 2, 3]] as const;

export function strokeLine(context: CanvasRenderingContext2D, line: Point[], pen: Pen): void {
  if (line.length < 2) return;
  context.beginPath();
  for (const [index, { x, y }] of line.entries()) {
    if (index === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  }
  context.lineJoin = 'round';
  context.setLineDash(pen.dash ?? []);
  context.strokeStyle = pen.colour;
  context.lineWidth = pen.width;
  context.stroke();
  context.setLineDash([]);
}

export function strokeCasing(
  context: CanvasRenderingContext2D,
  line: Point[],
  { sheet, weight }: ChartTheme,
): void {
  strokeLine(context, line, { colour: sheet, width: CASING_PX * weight });
}

export function casedLine(
  context: CanvasRenderingContext2D,
  line: Point[],
  pen: Pen,
  theme: ChartTheme,
): void {
  strokeCasing(context, line, theme);
  strokeLine(context, line, pen);
}

/** A dot, or with a fill other than its edge a ring. */
export function drawDot(
  context: CanvasRenderingContext2D,
  { x, y }: Point,
  { radius, fill, edge, width = 1.5 }: { radius: number; fill: string; edge: string; width?: number },
): void {
  context.beginPath();
  context.arc(x, y, radius, 0, 2 * Math.PI);
  context.fillStyle = fill;
  context.fill();
  context.strokeStyle = edge;
  context.lineWidth = width;
  context.stroke();
}

/** The area between a line and a level on one side of it, from x to x, as one path ready to fill. */
export function areaAbove(
  context: CanvasRenderingContext2D,
  line: Point[],
  level_px: number,
  from: number,
  to: number,
): void {
  context.save();
  context.beginPath();
  context.rect(from, 0, to - from, level_px);
  context.clip();
  context.beginPath();
  const [first, last] = [line[0], line.at(-1)];
  if (first && last) {
    context.moveTo(first.x, level_px);
    for (const { x, y } of line) context.lineTo(x, y);
    context.lineTo(last.x, level_px);
    context.fill();
  }
  context.restore();
}
