/** Measures of a column of samples: its peak between samples, and how long it stays above a limit. */

/** A column over a stretch of samples, both ends included. */
export interface Stretch {
  column: Float64Array;
  time_s: Float64Array;
  from: number;
  to: number;
}

/** Samples whose distances differ by more than this factor let nothing be read between them. */
const UNEVEN = 2.5;

/** Highest value of a stretch: where it lies between samples, the top of the parabola through the three around it. */
export function peakIn({ column, time_s, from, to }: Stretch): number {
  let top = from;
  for (let i = from; i <= to; i++) if (column[i]! > column[top]!) top = i;
  if (top === from || top === to) return column[top]!;
  const [a, b, c] = [column[top - 1]!, column[top]!, column[top + 1]!];
  const [h1, h2] = [time_s[top]! - time_s[top - 1]!, time_s[top + 1]! - time_s[top]!];
  const curve = ((c - b) / h2 - (b - a) / h1) / (h1 + h2);
  if (curve >= 0 || Math.max(h1, h2) > UNEVEN * Math.min(h1, h2)) return b;
  const slopeAt = (b - a) / h1 + curve * h1;
  return b - slopeAt ** 2 / (4 * curve);
}

/** Time above a limit, the column running straight from sample to sample [s] */
export function secondsAbove({ column, time_s, from, to }: Stretch, limit: number): number {
  let above = 0;
  for (let i = from + 1; i <= to; i++)
    above += (time_s[i]! - time_s[i - 1]!) * shareAbove(column[i - 1]!, column[i]!, limit);
  return above;
}

/** Share of a step spent above a limit, the temperature running straight from one end to the other [-] */
function shareAbove(from: number, to: number, limit: number): number {
  if (from <= limit && to <= limit) return 0;
  if (from > limit && to > limit) return 1;
  return (Math.max(from, to) - limit) / Math.abs(to - from);
}

/** Largest value of a column that is not empty. */
export function highest(column: Float64Array): number {
  let top = column[0]!;
  for (let i = 1; i < column.length; i++) if (column[i]! > top) top = column[i]!;
  return top;
}

/** Least and largest value of a column that is not empty. */
export function extremes(column: Float64Array): [least: number, most: number] {
  let [least, most] = [column[0]!, column[0]!];
  for (let i = 1; i < column.length; i++) {
    if (column[i]! < least) least = column[i]!;
    if (column[i]! > most) most = column[i]!;
  }
  return [least, most];
}
