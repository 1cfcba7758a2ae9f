import { pens, strokeCasing, strokeLine } from './draw-line.ts';
import type { Band, FanView } from './fan-view.ts';
import type { ChartTheme } from './theme.ts';

/** Under the lines of the run itself: a tint that hatch shows through, between edges in the grey of what is pinned. */
export function drawFan(context: CanvasRenderingContext2D, fan: FanView, theme: ChartTheme): void {
  for (const band of [fan.peak, ...fan.coldest]) drawBand(context, band, theme);
}

function drawBand(context: CanvasRenderingContext2D, { low, high }: Band, theme: ChartTheme): void {
  if (high.length < 2) return;
  context.save();
  context.beginPath();
  for (const { x, y } of high) context.lineTo(x, y);
  for (const { x, y } of low.toReversed()) context.lineTo(x, y);
  context.closePath();
  context.globalAlpha = 0.85;
  context.fillStyle = theme.shade;
  context.fill();
  context.restore();
  const pen = { colour: theme.pinned, width: 0.75 * theme.weight };
  for (const edge of [low, high]) strokeLine(context, edge, pen);
}

/** Over everything: one stint that may come. */
export function drawDrawn(context: CanvasRenderingContext2D, { drawn }: FanView, theme: ChartTheme): void {
  if (!drawn) return;
  for (const line of [drawn.peak, ...drawn.coldest]) {
    strokeCasing(context, line, theme);
    strokeLine(context, line, { colour: theme.move, width: pens.pinned * theme.weight });
  }
}
