/** Finding places on the common clock of a finished stint. Pure; the columns are in order of time. */
import type { Lap, StintResult } from '../../engine/index.ts';

/** Index of the last sample at or before a time; 0 before the first. */
export function sampleAt(times_s: Float64Array, time_s: number): number {
  let low = 0;
  let high = times_s.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((times_s[middle] ?? Infinity) <= time_s) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The lap that is driven at a time: the last one that has begun; a standing car stays on it. */
export function lapAt(laps: readonly Lap[], time_s: number): Lap | undefined {
  return laps.findLast((lap) => lap.start_s <= time_s) ?? laps[0];
}

export const endOf = (result: StintResult): number => result.clock.time_s.at(-1) ?? 0;

/** Times worth stepping to: the starts of all laps, or of all stops. Ascending. */
export function marksOf(result: StintResult, what: 'lap' | 'stop'): number[] {
  if (what === 'lap') return [...result.laps.map((lap) => lap.start_s), endOf(result)];
  return (result.corners[0]?.stops ?? []).map((stop) => stop.start_s);
}

/** The next mark in a direction, or null at the end. Going back passes a mark that was just reached. */
export function nextMark(marks_s: readonly number[], from_s: number, direction: 1 | -1): number | null {
  const slack_s = 0.05;
  return direction > 0
    ? (marks_s.find((mark) => mark > from_s + slack_s) ?? null)
    : (marks_s.findLast((mark) => mark < from_s - slack_s) ?? null);
}

/** Where to look first: the hottest moment of the lap that decides the hot side of the front. */
export function firstLook(result: StintResult): number {
  const corner = result.corners.find((each) => each.axle === 'front') ?? result.corners[0];
  const lap = result.laps.find((each) => each.lap === corner?.verdict.hotLap) ?? result.laps[0];
  const face = corner?.columns?.face_K;
  if (!lap || !face) return 0;
  let hottest = lap.firstSample;
  for (let i = lap.firstSample; i <= lap.lastSample; i++) {
    if ((face[i] ?? 0) > (face[hottest] ?? 0)) hottest = i;
  }
  return result.clock.time_s[hottest] ?? 0;
}
