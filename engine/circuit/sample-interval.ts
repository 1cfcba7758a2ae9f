/** How often a logged speed is measured, and how often it must be. */

/** Below this brake heat is far off: at 1 Hz by -13 % on a lap of 98 s, at 0.5 Hz by -41 % [Hz] */
const leastRate = 2;
/** Below this it is off by some percent: at 2 Hz by -2 to -5 %. `engine/MODEL.md` states errors from 5 Hz on [Hz] */
const validatedRate = 4;

/** Of the usual time between rows, rows that are left out here and there included. */
const ROOM = 1.05;

export const isTooSlow = (interval_s: number): boolean => interval_s * leastRate > ROOM;

/** What a slow log costs, in a sentence; empty where it is quick enough. Spaces before units do not break. */
export const slowSentence = (interval_s: number): string =>
  interval_s * validatedRate > ROOM
    ? `Only a sample every ${interval_s.toFixed(2)}\u00A0s: it blurs how hard the car brakes, and brake heat may come out several percent too low; log at 5\u00A0Hz or more`
    : '';

/** A step from row to row that whole units of a fine log do not make [m/s] */
const BIG_STEP_MPS = 1;
/** So many of them, and nearly all with a repeated row behind them, are a slow channel in a fast file. */
const ENOUGH = 5;
const NEARLY_ALL = 0.8;

/**
 * Time from one measured speed to the next in a logged lap, also where a slow channel's value is repeated row by row.
 *
 *     Δt = T / (n − 1)
 *
 * @remarks
 * n counts all rows; where a row that differs by over 1 m/s from the one before is followed by its own copy, four times in
 * five, n counts the rows that differ.
 * Source: definition.
 *
 * @param speed_mps - logged speeds [m/s]
 * @param span_s - time from the first to the last [s]
 * @returns usual interval [s]
 *
 * @example
 * sampleInterval(Float64Array.of(50, 40, 30, 20, 10), 2) // => 0.5
 */
export function sampleInterval(speed_mps: Float64Array, span_s: number): number {
  let [big, copied, own] = [0, 0, 1];
  for (let i = 1; i < speed_mps.length; i++) {
    const step_mps = Math.abs(speed_mps[i]! - speed_mps[i - 1]!);
    if (step_mps > 0) own += 1;
    if (step_mps <= BIG_STEP_MPS || i + 1 === speed_mps.length) continue;
    big += 1;
    if (speed_mps[i + 1] === speed_mps[i]) copied += 1;
  }
  const isHeld = big >= ENOUGH && copied > NEARLY_ALL * big;
  return span_s / Math.max(1, (isHeld ? own : speed_mps.length) - 1);
}
