import type { Box } from './place-labels.ts';
import type { ChartTheme } from './theme.ts';

/** Pitch of a hatch on the screen [px] */
export const PITCH_PX = 6;
const LINE_PX = 0.6;

type Stroke = [fromX: number, fromY: number, toX: number, toY: number];

/**
 * Lines at 45 degrees over a box, cut at its sides by reckoning: no clip, no pattern tile to blur at odd densities.
 * They hang from the box's top left corner, so that a box that grows does not move them.
 */
function slanted({ left, top, width, height }: Box, step: number, isMirrored = false): Stroke[] {
  const strokes: Stroke[] = [];
  for (let at = step / 2; at < width + height; at += step) {
    const [enter, leave] = [Math.max(0, at - height), Math.min(at, width)];
    const x = (along: number): number => (isMirrored ? left + width - along : left + along);
    strokes.push([x(enter), top + at - enter, x(leave), top + at - leave]);
  }
  return strokes;
}

/** Cross-hatch: the area past a hot limit. */
export function crossHatch(
  context: CanvasRenderingContext2D,
  box: Box,
  { ink, weight }: ChartTheme,
  pitch = PITCH_PX,
): void {
  if (box.width <= 0 || box.height <= 0) return;
  context.beginPath();
  for (const [fromX, fromY, toX, toY] of [...slanted(box, pitch), ...slanted(box, pitch, true)]) {
    context.moveTo(fromX, fromY);
    context.lineTo(toX, toY);
  }
  context.strokeStyle = ink;
  context.lineWidth = LINE_PX * weight;
  context.stroke();
}

/** Horizontal ruling; starts one pitch below the top, so that the limit stands free. */
export function ruling(
  context: CanvasRenderingContext2D,
  box: Box,
  { ink, weight }: ChartTheme,
  pitch = PITCH_PX,
): void {
  context.beginPath();
  for (let y = Math.round(box.top + pitch) + 0.5; y < box.top + box.height - 1; y += pitch) {
    context.moveTo(box.left, y);
    context.lineTo(box.left + box.width, y);
  }
  context.strokeStyle = ink;
  context.lineWidth = LINE_PX * weight;
  context.stroke();
}

/** Section hatch of a cut part, as the path of an SVG drawing. */
export const sectionHatch = (box: Box, pitch = PITCH_PX): string =>
  isFlat(box) ? '' : pathOf(slanted(box, pitch * Math.SQRT2));

/** Cross-hatch and ruling as paths of an SVG drawing. */
export const crossHatchPath = (box: Box, pitch = PITCH_PX): string =>
  isFlat(box) ? '' : pathOf([...slanted(box, pitch), ...slanted(box, pitch, true)]);

export function rulingPath(box: Box, pitch = PITCH_PX): string {
  const lines = Math.ceil(box.height / pitch) - 1;
  const strokes = Array.from({ length: isFlat(box) ? 0 : lines }, (_, i): Stroke => {
    const y = box.top + (i + 1) * pitch;
    return [box.left, y, box.left + box.width, y];
  });
  return pathOf(strokes);
}

/** Upright lines, as wide apart as the ruling's twice. */
export function uprightPath(box: Box, pitch = 2 * PITCH_PX): string {
  const lines = isFlat(box) ? 0 : Math.ceil(box.width / pitch) - 1;
  const strokes = Array.from({ length: lines }, (_, i): Stroke => {
    const x = box.left + (i + 1) * pitch;
    return [x, box.top, x, box.top + box.height];
  });
  return pathOf(strokes);
}

const isFlat = ({ width, height }: Box): boolean => width <= 0 || height <= 0;

function pathOf(strokes: Stroke[]): string {
  const short = (value: number): string => value.toFixed(1);
  return strokes
    .map(([fromX, fromY, toX, toY]) => `M${short(fromX)} ${short(fromY)}L${short(toX)} ${short(toY)}`)
    .join('');
}
