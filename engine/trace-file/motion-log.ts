/** The log as one run of rows in SI: when, how fast and how far, with what cannot be driven over. */
import type { TraceColumns } from '../circuit/trace.ts';
import type { Fault } from './time-line.ts';

export interface MotionLog {
  /** Indices among the rows of numbers. */
  kept: Uint32Array;
  /** Since the first row; where only a distance is logged, as distance and speed make it [s] */
  time_s: Float64Array;
  isTimed: boolean;
  speed_mps: Float64Array;
  /** From the first row on, laps end to end [m] */
  distance_m: Float64Array | null;
  faults: readonly Fault[];
  /** Where the log or a lap's time starts again: nothing joins the rows on either side. Indices into `kept`. */
  restarts: readonly number[];
  /** How long the file goes on without a speed before the first row that is used and after the last [s] */
  bare_s: { before: number; after: number };
}

/** Slower than this a step in distance gives no usable time [m/s] */
const CRAWL_MPS = 0.5;

/** Rows of a log that belong to one lap; `to` is one past the last. */
export interface Span {
  from: number;
  to: number;
}

/** Time along a log that has distance only. */
export function timeAlong(distance_m: Float64Array, speed_mps: Float64Array): Float64Array {
  const time_s = new Float64Array(distance_m.length);
  for (let i = 1; i < time_s.length; i++) {
    const mean_mps = Math.max(CRAWL_MPS, (speed_mps[i - 1]! + speed_mps[i]!) / 2);
    time_s[i] = time_s[i - 1]! + (distance_m[i]! - distance_m[i - 1]!) / mean_mps;
  }
  return time_s;
}

/** Distance driven in a span, by the trapezium rule over the speed [m] */
export function drivenIn({ time_s, speed_mps }: MotionLog, { from, to }: Span): number {
  let length_m = 0;
  for (let i = from + 1; i < to; i++) {
    length_m += ((speed_mps[i - 1]! + speed_mps[i]!) / 2) * (time_s[i]! - time_s[i - 1]!);
  }
  return length_m;
}

/** Distance by its own column; NaN where the file has none at an end of the span [m] */
export function alongIn({ distance_m }: MotionLog, { from, to }: Span): number {
  return distance_m ? distance_m[to - 1]! - distance_m[from]! : NaN;
}

export const durationOf = ({ time_s }: MotionLog, { from, to }: Span): number =>
  time_s[to - 1]! - time_s[from]!;

/** A column over a span, beginning at nothing. */
const fromNothing = (column: Float64Array, { from, to }: Span): Float64Array => {
  const start = column[from]!;
  return column.slice(from, to).map((value) => value - start);
};

/** What a lap needs; columns that a stint can do without come later. */
export function lapColumns(log: MotionLog, span: Span): TraceColumns {
  const { distance_m } = log;
  const isWhole = distance_m?.subarray(span.from, span.to).every((d) => !Number.isNaN(d));
  return {
    ...(log.isTimed ? { time_s: fromNothing(log.time_s, span) } : {}),
    ...(distance_m && isWhole ? { distance_m: fromNothing(distance_m, span) } : {}),
    speed_mps: log.speed_mps.slice(span.from, span.to),
  };
}
