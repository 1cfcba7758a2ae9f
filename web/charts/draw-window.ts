import type { Box } from './place-labels.ts';
import type { ChartTheme } from './theme.ts';
import type { ValueScale } from './value-scale.ts';
import { crossHatch, PITCH_PX, ruling } from './hatch.ts';

export interface Limits {
  bite_K: number;
  facePeak_K: number;
}

/** The window is bare paper between ruling (too cold to bite) and cross-hatch (too hot). */
export function drawWindow(
  context: CanvasRenderingContext2D,
  frame: Box,
  y: ValueScale,
  limits: Limits,
  theme: ChartTheme,
  pitch = PITCH_PX,
): void {
  const { left, top, width, height } = frame;
  const bottom = top + height;
  const inside = (at: number): number => Math.min(bottom, Math.max(top, at));
  const [hot, cold] = [inside(y.of(limits.facePeak_K)), inside(y.of(limits.bite_K))];
  context.fillStyle = theme.sheet;
  context.fillRect(left, top, width, height);
  crossHatch(context, { left, top, width, height: hot - top }, theme, pitch);
  ruling(context, { left, top: cold, width, height: bottom - cold }, theme, pitch);
}

/** The two limits as ink lines, drawn over what must not hide them. */
export function drawLimits(
  context: CanvasRenderingContext2D,
  frame: Box,
  y: ValueScale,
  limits: Limits,
  theme: ChartTheme,
): void {
  context.beginPath();
  for (const limit of [limits.facePeak_K, limits.bite_K]) {
    const at = Math.round(y.of(limit)) + 0.5;
    if (at < frame.top || at > frame.top + frame.height) continue;
    context.moveTo(frame.left, at);
    context.lineTo(frame.left + frame.width, at);
  }
  context.strokeStyle = theme.ink;
  context.lineWidth = 1.5 * theme.weight;
  context.stroke();
}

export function drawFrame(context: CanvasRenderingContext2D, frame: Box, { ink, weight }: ChartTheme): void {
  context.strokeStyle = ink;
  context.lineWidth = weight;
  context.strokeRect(frame.left + 0.5, frame.top + 0.5, frame.width - 1, frame.height - 1);
}

export function within(context: CanvasRenderingContext2D, frame: Box, draw: () => void): void {
  context.save();
  context.beginPath();
  context.rect(frame.left, frame.top, frame.width, frame.height);
  context.clip();
  draw();
  context.restore();
}
