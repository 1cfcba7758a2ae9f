import { drawLapEdges } from './draw-lap-edges.ts';
import { areaAbove, casedLine, drawDot, pens, PINNED_DASHES, strokeCasing, strokeLine } from './draw-line.ts';
import { drawFrame, drawLimits, drawWindow, within } from './draw-window.ts';
import { ruling } from './hatch.ts';
import type { Layer, StintView } from './stint-view.ts';
import type { ChartTheme } from './theme.ts';

/** Per-lap face peak, mean and coldest stop of one corner against its window. */
export function drawStint(
  context: CanvasRenderingContext2D,
  view: StintView,
  theme: ChartTheme,
  layer: Layer | null = null,
): void {
  const { frame, x, y, corner } = view;
  drawWindow(context, frame, y, corner.window, theme);
  drawLapEdges(context, view, theme);
  within(context, frame, () => {
    layer?.under(context, view, theme);
    drawTraces(context, view, theme);
    layer?.over(context, view, theme);
  });
  drawFrame(context, frame, theme);
  for (const { left } of x.stands) {
    strokeLine(
      context,
      [
        { x: left, y: frame.top },
        { x: left, y: frame.top + frame.height },
      ],
      {
        colour: theme.ink,
        width: theme.weight,
      },
    );
  }
}

/** The filled area covers the hatch; every trace but the peak, its own edge, lies on a casing above it. */
function drawTraces(context: CanvasRenderingContext2D, view: StintView, theme: ChartTheme): void {
  const { now, pinned, stands, frame, y, corner } = view;
  const bold = { colour: theme.ink, width: pens.now * theme.weight };
  const thin = { colour: theme.ink, width: pens.thin * theme.weight };
  strokeCasing(context, now.peak, theme);
  fillOut(context, view, theme);
  for (const line of [now.mean, ...now.coldest, ...stands]) strokeCasing(context, line, theme);
  for (const { peak, coldest, dash } of pinned) {
    const width = pens.pinned * theme.weight;
    const dashed = { colour: theme.pinned, width, dash: [...(PINNED_DASHES[dash] ?? pens.pinnedDash)] };
    for (const line of [peak, ...coldest]) casedLine(context, line, dashed, theme);
  }
  drawLimits(context, frame, y, corner.window, theme);
  strokeLine(context, now.mean, thin);
  for (const line of now.coldest) strokeLine(context, line, bold);
  strokeLine(context, now.peak, bold);
  for (const line of stands) strokeLine(context, line, thin);
  drawMarks(context, view, theme);
}

/** Solid between line and limit: 30 K is only some ten pixels, too few for a hatch to show. */
function fillOut(context: CanvasRenderingContext2D, view: StintView, theme: ChartTheme): void {
  const { now, tooHot, tooCold, corner, y } = view;
  context.fillStyle = theme.hot;
  for (const { left, right } of tooHot)
    areaAbove(context, now.peak, y.of(corner.window.facePeak_K), left, right);
  const bite = y.of(corner.window.bite_K);
  for (const { left, right } of tooCold) {
    const lowest = Math.max(
      ...now.coldest.flat().map((point) => (point.x > left && point.x < right ? point.y : 0)),
    );
    ruling(context, { left, top: bite, width: right - left, height: lowest - bite }, theme, 2.5);
  }
}

/** Counted laps carry a mark on both verdict lines: light on the filled area, dark on paper, open below bite. */
function drawMarks(
  context: CanvasRenderingContext2D,
  { now, x, y, corner }: StintView,
  theme: ChartTheme,
): void {
  const counted = new Set(x.laps.filter(({ lap }) => lap.counted).map(({ middle }) => middle));
  for (const point of now.peak) {
    if (!counted.has(point.x) || point.y >= y.of(corner.window.facePeak_K)) continue;
    drawDot(context, point, { radius: 2.2, fill: theme.hot, edge: theme.sheet, width: 1.2 });
  }
  for (const point of now.coldest.flat()) {
    if (!counted.has(point.x)) continue;
    const isCold = point.y > y.of(corner.window.bite_K);
    drawDot(context, point, {
      radius: isCold ? 3.4 : 2,
      fill: isCold ? theme.sheet : theme.ink,
      edge: theme.ink,
    });
  }
}
