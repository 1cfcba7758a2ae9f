/** How wide a local quadratic must be for the noise of a logged column. */

/** Noise left in an acceleration [m/s²]: a sixth of what a lifted throttle gives, 1.5-2.2 at 60 m/s, so it is no braking. */
const NOISE_LEFT_MPS2 = 0.25;

/** An accelerometer may leave a third: its noise is quick and only a wide window, which blurs braking, would take it out. */
const QUICK_NOISE_LEFT_MPS2 = 0.5;

/** A median absolute third difference of white noise, over its standard deviation: √(1 + 9 + 9 + 1) / 1.4826. */
const THIRD_DIFFERENCE = Math.sqrt(20) / 1.4826;

/** Root of the integral of K² and of K'² for the kernel K of a quadratic fit with tricube weights; integrals of the kernel. */
const VALUE_NOISE = 1.194;
const CHANGE_NOISE = 3.575;

/** Fewer different values than this tell no noise. */
const LEAST_VALUES = 20;

export interface Noise {
  /** standard deviation, in the column's unit */
  deviation: number;
  /** time from one value of its own to the next [s] */
  interval_s: number;
}

/**
 * Noise of a logged column, from its third differences: motion is smooth over four samples nearly everywhere,
 * noise is not. Rows that repeat the one before (a slow channel in a fast file) are no values of their own, and no column
 * is better than its last digit.
 *
 *     σ = max(1.4826 median|Δ³y| / √20, q / √12)
 *
 * Source: median absolute deviation, Hampel, J. Amer. Statist. Assoc. 69 (1974) 383 (from memory); variance of Δ³ of
 * white noise; even error of rounding to steps of q.
 */
export function noiseOf(column: Float64Array, span_s: number): Noise {
  const own = column.filter((value, i) => i === 0 || value !== column[i - 1]);
  if (own.length < LEAST_VALUES) return { deviation: 0, interval_s: span_s / (column.length - 1) };
  const steps = own.subarray(1).map((value, i) => Math.abs(value - own[i]!));
  const third = own
    .subarray(3)
    .map((value, i) => Math.abs(value - 3 * own[i + 2]! + 3 * own[i + 1]! - own[i]!))
    .sort();
  const white = third[third.length >> 1]! / THIRD_DIFFERENCE;
  const rounding = steps.reduce((least, step) => Math.min(least, step), Infinity) / Math.sqrt(12);
  return { deviation: Math.max(white, rounding), interval_s: span_s / (own.length - 1) };
}

/**
 * Half window of a quadratic fit through speeds whose change over short steps carries no more noise than is harmless.
 *
 *     W = (3.575 σ √Δt / a)^(2/3),  a = 0.25 m/s²
 *
 * Source: variance of a linear filter of white noise; `CHANGE_NOISE` by quadrature.
 *
 * @param noise - deviation of the speed [m/s] and interval of its samples [s]
 * @returns half window [s]
 *
 * @example
 * speedHalfWindow({ deviation: 0.1, interval_s: 0.1 }) // => 0.58915
 */
export function speedHalfWindow({ deviation, interval_s }: Noise): number {
  return Math.cbrt((CHANGE_NOISE * deviation * Math.sqrt(interval_s)) / NOISE_LEFT_MPS2) ** 2;
}

/**
 * Half window of a quadratic fit through logged accelerations whose values carry no more noise than is harmless.
 *
 *     W = Δt (1.194 σ / a)²,  a = 0.5 m/s²
 *
 * Source: variance of a linear filter of white noise; `VALUE_NOISE` by quadrature.
 *
 * @param noise - deviation of the acceleration [m/s²] and interval of its samples [s]
 * @returns half window [s]
 *
 * @example
 * accelHalfWindow({ deviation: 0.49, interval_s: 0.02 }) // => 0.02738
 */
export function accelHalfWindow({ deviation, interval_s }: Noise): number {
  return interval_s * ((VALUE_NOISE * deviation) / QUICK_NOISE_LEFT_MPS2) ** 2;
}
