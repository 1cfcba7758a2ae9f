import { heatDomain_K } from '../display/heat-scale.ts';
import type { Bar, CellsView } from './cells-view.ts';
import { drawFrame, drawLimits, drawWindow } from './draw-window.ts';
import type { ChartTheme } from './theme.ts';
import type { ValueScale } from './value-scale.ts';

const PITCH_PX = 5;
const SHADES = 24;

/** A row of lap cells: from the coldest hard stop to the face peak, filled by temperature. */
export function drawCells(context: CanvasRenderingContext2D, view: CellsView, theme: ChartTheme): void {
  const { frame, y, corner, bars } = view;
  drawWindow(context, frame, y, corner.window, theme, PITCH_PX);
  drawLimits(context, frame, y, corner.window, theme);
  const fill = heatColumn(context, y, theme);
  const limit = y.of(corner.window.facePeak_K);
  for (const bar of bars) drawBar(context, bar, fill, limit, theme);
  drawFrame(context, frame, theme);
  for (const bar of bars) {
    if (bar.isHot)
      triangle(context, bar.left + bar.width / 2, frame.top + 5, Math.min(6, bar.width * 0.6), {
        fill: theme.hot,
        sheet: theme.sheet,
      });
    if (bar.isCold) notch(context, bar, frame.top + frame.height - 2, 2.5, theme);
    else if (bar.isCut) notch(context, bar, frame.top + frame.height - 2, 1.5, theme);
  }
}

/** One gradient for the whole row: a colour is a height, as on the scale. */
function heatColumn(context: CanvasRenderingContext2D, y: ValueScale, theme: ChartTheme): CanvasGradient {
  const [low, high] = heatDomain_K;
  const column = context.createLinearGradient(0, y.of(low), 0, y.of(high));
  for (let i = 0; i <= SHADES; i++) column.addColorStop(i / SHADES, theme.heat.colourAt(i / SHADES));
  return column;
}

function drawBar(
  context: CanvasRenderingContext2D,
  { left, width, top, bottom, counted, isHot }: Bar,
  fill: CanvasGradient,
  limit: number,
  theme: ChartTheme,
): void {
  context.fillStyle = theme.sheet;
  context.fillRect(left - 2, top - 2, width + 4, bottom - top + 4);
  context.fillStyle = fill;
  context.fillRect(left, top, width, bottom - top);
  if (isHot) {
    context.fillStyle = theme.hot;
    context.fillRect(left, top, width, Math.max(2, limit - top));
  }
  context.strokeStyle = theme.ink;
  context.lineWidth = (counted ? 1.5 : 1) * theme.weight;
  context.strokeRect(left, top, width, bottom - top);
}

function triangle(
  context: CanvasRenderingContext2D,
  x: number,
  top: number,
  half: number,
  { fill, sheet }: { fill: string; sheet: string },
): void {
  context.beginPath();
  context.moveTo(x - half, top);
  context.lineTo(x + half, top);
  context.lineTo(x, top + half * 1.3);
  context.closePath();
  context.strokeStyle = sheet;
  context.lineWidth = 3;
  context.stroke();
  context.fillStyle = fill;
  context.fill();
}

/** An open wedge at the foot: this lap goes below bite, or below the row. */
function notch(
  context: CanvasRenderingContext2D,
  bar: Bar,
  foot: number,
  width: number,
  theme: ChartTheme,
): void {
  const x = bar.left + bar.width / 2;
  context.beginPath();
  context.moveTo(x - 5, foot);
  context.lineTo(x, foot - 6);
  context.lineTo(x + 5, foot);
  context.fillStyle = theme.sheet;
  context.fill();
  context.strokeStyle = theme.ink;
  context.lineWidth = width * theme.weight;
  context.stroke();
}
