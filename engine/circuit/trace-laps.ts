import { timeFromDistance } from './clean-trace.ts';
import type { TraceColumns } from './trace.ts';

/** A run of rows with one lap number. */
export interface TraceLap {
  lap: number;
  from: number;
  /** one past its last row */
  to: number;
  length_m: number;
  duration_s: number;
}

/** Laps whose length is this near to the usual one are complete. */
const SAME_LENGTH = 0.03;

const LEAST_ROWS = 3;

export function sliceTrace(trace: TraceColumns, from: number, to: number): TraceColumns {
  const entries = Object.entries(trace) as [keyof TraceColumns, Float64Array][];
  return Object.fromEntries(
    entries.map(([key, column]) => [key, column.slice(from, to)]),
  ) as unknown as TraceColumns;
}

/** Length by the distance column, else by integrating the speed; duration likewise. */
export function extentOf(trace: TraceColumns): { length_m: number; duration_s: number } {
  const { time_s, distance_m, speed_mps } = trace;
  const span = (column: Float64Array): number => column.at(-1)! - column[0]!;
  const duration_s = span(time_s ?? timeFromDistance(distance_m!, speed_mps));
  return { length_m: distance_m ? span(distance_m) : drivenLength(time_s!, speed_mps), duration_s };
}

/**
 * Distance driven, by the trapezium rule over a speed trace.
 *
 *     s = ∫ V dt
 *
 * Source: definition of speed; Press et al., Numerical Recipes, ch. 4 (from memory).
 *
 * @param time_s - times of the samples [s]
 * @param speed_mps - speeds [m/s]
 * @returns distance [m]
 *
 * @example
 * drivenLength([0, 2, 4], [10, 20, 10]) // => 60
 */
export function drivenLength(time_s: ArrayLike<number>, speed_mps: ArrayLike<number>): number {
  let length_m = 0;
  for (let i = 1; i < time_s.length; i++) {
    length_m += ((speed_mps[i - 1]! + speed_mps[i]!) / 2) * (time_s[i]! - time_s[i - 1]!);
  }
  return length_m;
}

export function lapsOf(trace: TraceColumns, lapNumbers: Float64Array): TraceLap[] {
  const laps: TraceLap[] = [];
  let from = 0;
  for (let i = 1; i <= lapNumbers.length; i++) {
    if (i < lapNumbers.length && lapNumbers[i] === lapNumbers[from]) continue;
    if (i - from >= LEAST_ROWS) {
      laps.push({ lap: lapNumbers[from]!, from, to: i, ...extentOf(sliceTrace(trace, from, i)) });
    }
    from = i;
  }
  return laps;
}

/** The laps that are as long as most; of two lengths equally common the longer. */
function completeLaps(laps: readonly TraceLap[]): readonly TraceLap[] {
  const alike = laps.map(({ length_m: usual_m }) =>
    laps.filter(({ length_m }) => Math.abs(length_m - usual_m) <= SAME_LENGTH * usual_m),
  );
  const longest = (group: readonly TraceLap[]): number => Math.max(...group.map(({ length_m }) => length_m));
  return alike.reduce<readonly TraceLap[]>(
    (best, group) =>
      group.length > best.length || (group.length === best.length && longest(group) > longest(best))
        ? group
        : best,
    [],
  );
}

/** The fastest complete lap: an out-lap from the pit or a lap that the log cuts off is not complete. */
export function fastestLap(laps: readonly TraceLap[]): TraceLap | undefined {
  return completeLaps(laps).reduce<TraceLap | undefined>(
    (best, lap) => (!best || lap.duration_s < best.duration_s ? lap : best),
    undefined,
  );
}
