/** What the reader asks of a column of numbers. NaN counts as nothing; long columns are looked at in part. */

/** Values that speak for a column. */
const ENOUGH = 20_000;

const strideOf = (n: number): number => Math.max(1, Math.floor(n / ENOUGH));

export function rangeOf(values: Float64Array): { low: number; high: number } {
  let low = NaN;
  let high = NaN;
  for (const value of values) {
    if (!(value >= low)) low = Number.isNaN(value) ? low : value;
    if (!(value <= high)) high = Number.isNaN(value) ? high : value;
  }
  return { low, high };
}

/** A quantity at so many rows, or at enough of them evenly. */
export function sampled(n: number, at: (i: number) => number): Float64Array {
  const stride = strideOf(n);
  return Float64Array.from({ length: Math.max(0, Math.ceil(n / stride)) }, (_, k) => at(k * stride));
}

/** Steps from row to row, where both are there. */
export function differences(values: Float64Array): number[] {
  const steps: number[] = [];
  const stride = strideOf(values.length);
  for (let i = 1; i < values.length; i += stride) {
    const step = values[i]! - values[i - 1]!;
    if (!Number.isNaN(step)) steps.push(step);
  }
  return steps;
}

/** The value below which a share of them lies. */
export function quantile(values: ArrayLike<number>, share: number): number {
  const some: number[] = [];
  const stride = strideOf(values.length);
  for (let i = 0; i < values.length; i += stride) if (!Number.isNaN(values[i]!)) some.push(values[i]!);
  some.sort((a, b) => a - b);
  return some[Math.min(some.length - 1, Math.floor(share * some.length))] ?? NaN;
}

export interface Line {
  /** y over x, by least squares. */
  slope: number;
  /** From -1 to 1; NaN where one does not vary. */
  correlation: number;
}

export function lineThrough(x: ArrayLike<number>, y: ArrayLike<number>): Line {
  let n = 0;
  let [sx, sy, sxx, syy, sxy] = [0, 0, 0, 0, 0];
  for (let i = 0; i < Math.min(x.length, y.length); i++) {
    const [a, b] = [x[i]!, y[i]!];
    if (Number.isNaN(a + b)) continue;
    n += 1;
    sx += a;
    sy += b;
    sxx += a * a;
    syy += b * b;
    sxy += a * b;
  }
  const xx = sxx - (sx * sx) / n;
  const yy = syy - (sy * sy) / n;
  const xy = sxy - (sx * sy) / n;
  return { slope: xy / xx, correlation: xy / Math.sqrt(xx * yy) };
}

export const correlation = (x: ArrayLike<number>, y: ArrayLike<number>): number =>
  lineThrough(x, y).correlation;
