/** What a sensor that follows slowly shows of a temperature that moves. */

/** A stretch of time over which the temperature goes in a straight line. */
export interface Stretch {
  from_K: number;
  to_K: number;
  lasts_s: number;
}

/**
 * What a sensor with a lag shows at the end of a stretch.
 *
 *     y₁ = x₁ − sτ + (y₀ − x₀ + sτ) e^(−t/τ),  s = (x₁ − x₀)/t
 *
 * @remarks
 * First order, τ dy/dt = x − y: it meets 63 % of a step after τ. Exact for straight lines, however long the stretch.
 * Source: first-order instrument, in any text on measurement; here solved for a ramp.
 *
 * @param shown_K - by the sensor at the beginning [K]
 * @param stretch - of the temperature that it follows
 * @param lag_s - time constant τ; 0 follows at once [s]
 * @returns shown at the end [K]
 *
 * @example
 * laggedReading(0, { from_K: 1, to_K: 1, lasts_s: 0.5 }, 0.15) // => 0.96433
 * laggedReading(0, { from_K: 0, to_K: 100, lasts_s: 1 }, 0.5) // => 56.7668
 */
export function laggedReading(shown_K: number, { from_K, to_K, lasts_s }: Stretch, lag_s: number): number {
  if (lag_s === 0) return to_K;
  if (lasts_s === 0) return shown_K;
  const behind_K = ((to_K - from_K) / lasts_s) * lag_s;
  return to_K - behind_K + (shown_K - from_K + behind_K) * Math.exp(-lasts_s / lag_s);
}
