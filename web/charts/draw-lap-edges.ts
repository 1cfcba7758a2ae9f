import type { LapScale } from './lap-scale.ts';
import type { Box } from './place-labels.ts';
import type { ChartTheme } from './theme.ts';

/** A hairline where each lap begins. */
export function drawLapEdges(
  context: CanvasRenderingContext2D,
  { frame, x }: { frame: Box; x: LapScale },
  theme: ChartTheme,
): void {
  context.beginPath();
  for (const { left } of x.laps) {
    const at = Math.round(left) + 0.5;
    context.moveTo(at, frame.top);
    context.lineTo(at, frame.top + frame.height);
  }
  context.strokeStyle = theme.hairline;
  context.lineWidth = 0.5 * theme.weight;
  context.stroke();
}
