import type { Box } from './place-labels.ts';

/** Pitch of a hatch on the screen [px] */
export const PITCH_PX = 6;

/** Hatching as in a section drawing: lines at 45 degrees, one way or crossed, cut at the box without a clip. */
export function hatch(
  context: CanvasRenderingContext2D,
  box: Box,
  { colour, pitch = PITCH_PX, crossed = true }: { colour: string; pitch?: number; crossed?: boolean },
): void {
  const { left, top, width, height } = box;
  if (width <= 0 || height <= 0) return;
  const step = crossed ? pitch : pitch * Math.SQRT2; // crossed lines are told apart along the edge
  context.beginPath();
  for (let at = step / 2; at < width + height; at += step) {
    const [enter, leave] = [Math.max(0, at - height), Math.min(at, width)];
    context.moveTo(left + enter, top + at - enter);
    context.lineTo(left + leave, top + at - leave);
    if (!crossed) continue;
    context.moveTo(left + width - enter, top + at - enter);
    context.lineTo(left + width - leave, top + at - leave);
  }
  context.strokeStyle = colour;
  context.lineWidth = 0.6;
  context.stroke();
}

/** Horizontal ruling; starts one pitch below the top, so that the limit stands free. */
export function ruling(context: CanvasRenderingContext2D, box: Box, colour: string, pitch = PITCH_PX): void {
  context.beginPath();
  for (let y = Math.round(box.top + pitch) + 0.5; y < box.top + box.height - 1; y += pitch) {
    context.moveTo(box.left, y);
    context.lineTo(box.left + box.width, y);
  }
  context.strokeStyle = colour;
  context.lineWidth = 0.6;
  context.stroke();
}
