import { pens } from './draw-line.ts';
import type { MapView } from './map-view.ts';
import type { ChartTheme } from './theme.ts';

const ROAD_PX = 7;

/** The circuit in the colours of the face, inside an ink casing; neighbours of one shade are one stroke. */
export function drawMap(
  context: CanvasRenderingContext2D,
  { line, face_K }: MapView,
  theme: ChartTheme,
): void {
  context.lineJoin = 'round';
  context.lineCap = 'round';
  const path = (from: number, to: number): void => {
    context.beginPath();
    for (let i = from; i <= to; i++) context.lineTo(line[i]?.x ?? 0, line[i]?.y ?? 0);
  };
  path(0, line.length - 1);
  context.strokeStyle = theme.ink;
  context.lineWidth = ROAD_PX + (2 * pens.now - 0.5) * theme.weight;
  context.stroke();
  context.lineWidth = ROAD_PX;
  context.lineCap = 'butt';
  let start = 0;
  let shade = theme.heat.colour(face_K[0] ?? 0);
  for (let i = 1; i < line.length; i++) {
    const next = theme.heat.colour(face_K[i] ?? 0);
    if (next === shade && i < line.length - 1) continue;
    path(Math.max(0, start - 1), i);
    context.strokeStyle = shade;
    context.stroke();
    [start, shade] = [i, next];
  }
}
