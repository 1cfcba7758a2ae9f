import type { Lap } from '../../engine/index.ts';

/** Time of the stint against x: every lap equally wide, a standing car squeezed into a short tail. */
export interface LapScale {
  /** Where the first lap starts and the last span ends [px] */
  left: number;
  right: number;
  lapWidth: number;
  laps: LapCell[];
  /** Stretches in which no lap is driven. */
  stands: Span[];
  xOf(time_s: number): number;
  timeOf(x: number): number;
}

export interface Span {
  start_s: number;
  end_s: number;
  left: number;
  right: number;
}

export interface LapCell extends Span {
  lap: Lap;
  middle: number;
}

const STAND_PX = 18;
const SHORTEST_STAND_S = 1;

/** Wider charts keep room for labels at the right; narrow ones label inside. */
export const isNarrow = (width_px: number): boolean => width_px < 520;

/** Left and right end of the lap scale in a chart of this width: one frame for all charts under each other. */
export function lapFrame(width_px: number): [left: number, right: number] {
  return isNarrow(width_px) ? [38, width_px - 2] : [48, width_px - 92];
}

export function lapScale(laps: Lap[], end_s: number, [left, right]: [number, number]): LapScale {
  const standCount = countStands(laps, end_s);
  const lapWidth = (right - left - standCount * STAND_PX) / Math.max(1, laps.length);
  const cells: LapCell[] = [];
  const stands: Span[] = [];
  let x = left;
  laps.forEach((lap, index) => {
    cells.push({
      lap,
      start_s: lap.start_s,
      end_s: lap.end_s,
      left: x,
      right: x + lapWidth,
      middle: x + lapWidth / 2,
    });
    x += lapWidth;
    const next_s = laps[index + 1]?.start_s ?? end_s;
    if (next_s - lap.end_s > SHORTEST_STAND_S) {
      stands.push({ start_s: lap.end_s, end_s: next_s, left: x, right: x + STAND_PX });
      x += STAND_PX;
    }
  });
  const spans: Span[] = [...cells, ...stands].sort((a, b) => a.start_s - b.start_s);
  return {
    left,
    right: x,
    lapWidth,
    laps: cells,
    stands,
    xOf: (time_s) => across(spans, time_s, 'start_s', 'end_s', 'left', 'right'),
    timeOf: (at) => across(spans, at, 'left', 'right', 'start_s', 'end_s'),
  };
}

function countStands(laps: Lap[], end_s: number): number {
  return laps.filter((lap, i) => (laps[i + 1]?.start_s ?? end_s) - lap.end_s > SHORTEST_STAND_S).length;
}

type Edge = keyof Span;

/** Straight-line reading of one edge pair against another, held at both ends. */
function across(spans: Span[], value: number, from: Edge, to: Edge, low: Edge, high: Edge): number {
  const span = spans.find((candidate) => value <= candidate[to]) ?? spans.at(-1);
  if (!span) return 0;
  const share = (value - span[from]) / (span[to] - span[from] || 1);
  return span[low] + Math.min(1, Math.max(0, share)) * (span[high] - span[low]);
}
