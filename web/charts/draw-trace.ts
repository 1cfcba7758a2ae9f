import { areaAbove, drawDot, pens, strokeCasing, strokeLine } from './draw-line.ts';
import { drawFrame, drawLimits, drawWindow, within } from './draw-window.ts';
import type { ChartTheme } from './theme.ts';
import type { TraceView } from './trace-view.ts';

/** Face and cheek over one lap against the window, with the braking phases, the speed and the braking power beneath. */
export function drawTrace(context: CanvasRenderingContext2D, view: TraceView, theme: ChartTheme): void {
  const { frame, speedFrame, powerFrame } = view;
  drawWindow(context, frame, view.y, view.corner.window, theme);
  within(context, frame, () => {
    shadeBraking(context, view, theme, frame.top, frame.height);
    drawTemperatures(context, view, theme);
  });
  drawFrame(context, frame, theme);
  shadeBraking(context, view, theme, speedFrame.top, speedFrame.height);
  within(context, speedFrame, () => {
    strokeLine(context, view.speed, { colour: theme.ink, width: pens.thin * theme.weight });
  });
  drawFrame(context, speedFrame, theme);
  shadeBraking(context, view, theme, powerFrame.top, powerFrame.height);
  within(context, powerFrame, () => {
    context.fillStyle = theme.shade;
    areaAbove(context, view.power, powerFrame.top + powerFrame.height, frame.left, frame.left + frame.width);
    strokeLine(context, view.power, { colour: theme.ink, width: pens.thin * theme.weight });
  });
  drawFrame(context, powerFrame, theme);
  drawStops(context, view, theme);
}

function shadeBraking(
  context: CanvasRenderingContext2D,
  { stops }: TraceView,
  theme: ChartTheme,
  top: number,
  height: number,
): void {
  context.fillStyle = theme.shade;
  for (const { stop, left, right } of stops) {
    context.globalAlpha = stop.hard ? 0.75 : 0.35;
    context.fillRect(left, top, right - left, height);
  }
  context.globalAlpha = 1;
}

function drawTemperatures(context: CanvasRenderingContext2D, view: TraceView, theme: ChartTheme): void {
  const { frame, y, corner, face, cheek, pinned } = view;
  strokeCasing(context, face, theme);
  context.fillStyle = theme.hot;
  areaAbove(context, face, y.of(corner.window.facePeak_K), frame.left, frame.left + frame.width);
  for (const line of [pinned, cheek]) strokeCasing(context, line, theme);
  drawLimits(context, frame, y, corner.window, theme);
  strokeLine(context, pinned, {
    colour: theme.pinned,
    width: pens.pinned * theme.weight,
    dash: [...pens.pinnedDash],
  });
  strokeLine(context, cheek, { colour: theme.ink, width: pens.thin * theme.weight });
  strokeLine(context, face, { colour: theme.ink, width: pens.now * theme.weight });
}

/** Of the ring of a hard stop: its number stands in it [px] */
const HARD_RING_PX = 9;

/** A ring where a hard stop starts, and its distance to bite as a dimension; a small ring for a light one. */
function drawStops(
  context: CanvasRenderingContext2D,
  { stops, y, corner, frame }: TraceView,
  theme: ChartTheme,
): void {
  const bite = Math.min(frame.top + frame.height, y.of(corner.window.bite_K));
  for (const { stop, start } of stops) {
    if (start.y > frame.top + frame.height) continue;
    if (stop.hard) drawDimension(context, start.x, start.y, bite, theme);
    const radius = stop.hard ? HARD_RING_PX : 3;
    drawDot(context, start, {
      radius,
      fill: theme.sheet,
      edge: theme.ink,
      width: (stop.hard ? 2 : 1.2) * theme.weight,
    });
  }
}

function drawDimension(
  context: CanvasRenderingContext2D,
  x: number,
  from: number,
  to: number,
  { ink, weight }: ChartTheme,
): void {
  if (Math.abs(to - from) < 14) return;
  const way = Math.sign(to - from);
  strokeLine(
    context,
    [
      { x, y: from },
      { x, y: to },
    ],
    { colour: ink, width: 0.8 * weight },
  );
  context.beginPath();
  context.moveTo(x, to);
  context.lineTo(x - 3, to - way * 8);
  context.lineTo(x + 3, to - way * 8);
  context.fillStyle = ink;
  context.fill();
}
