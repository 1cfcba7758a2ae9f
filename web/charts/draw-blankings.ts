import { drawLapEdges } from './draw-lap-edges.ts';
import type { BlankingView } from './blanking-view.ts';
import type { Point } from './columns.ts';
import { casedLine, pens } from './draw-line.ts';
import { drawFrame, within } from './draw-window.ts';
import { crossHatch, ruling } from './hatch.ts';
import type { ChartTheme } from './theme.ts';

/** How much of a lap that does not count is left to be seen [-] */
const PALE = 0.35;
/** Share of a lap's width that its face peak fills: between them the window stays bare [-] */
const FILLED = 0.56;

/** All blankings of one corner: bare where it is in, ruled where too cold, cross-hatched where too hot. */
export function drawBlankings(
  context: CanvasRenderingContext2D,
  view: BlankingView,
  theme: ChartTheme,
): void {
  const { frame, contour, pale, tooHot, tooCold, inside } = view;
  context.fillStyle = theme.sheet;
  context.fillRect(frame.left, frame.top, frame.width, frame.height);
  within(context, frame, () => {
    clipped(context, tooCold, () => ruling(context, frame, theme));
    clipped(context, tooHot, () => crossHatch(context, frame, theme));
    clipped(context, inside, () => drawHeat(context, view, theme));
    drawLapEdges(context, view, theme);
    const pen = { colour: theme.ink, width: pens.now * theme.weight };
    for (const line of contour) casedLine(context, line, pen, theme);
    context.globalAlpha = 1 - PALE;
    context.fillStyle = theme.sheet;
    for (const { left, right } of pale) context.fillRect(left, frame.top, right - left, frame.height);
    context.globalAlpha = 1;
  });
  drawFrame(context, frame, theme);
}

function clipped(context: CanvasRenderingContext2D, area: Point[][], draw: () => void): void {
  context.save();
  context.beginPath();
  for (const ring of area) {
    for (const [i, { x, y }] of ring.entries()) {
      if (i === 0) context.moveTo(x, y);
      else context.lineTo(x, y);
    }
    context.closePath();
  }
  context.clip('evenodd');
  draw();
  context.restore();
}

/** A bar a lap, as in the rows of lap cells: each height has the colour of the face peak there. */
function drawHeat(
  context: CanvasRenderingContext2D,
  { frame, columns }: BlankingView,
  theme: ChartTheme,
): void {
  for (const { left, right, shades } of columns) {
    const width = FILLED * (right - left);
    const fill = context.createLinearGradient(0, frame.top + frame.height, 0, frame.top);
    for (const { share, face_K } of shades) fill.addColorStop(share, theme.heat.colour(face_K));
    context.fillStyle = fill;
    context.fillRect((left + right - width) / 2, frame.top, width, frame.height);
  }
}
