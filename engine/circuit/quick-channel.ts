/** A channel that shows at once what a logged speed shows slowly: an accelerometer, or the pressure in the brake lines. */
import { localQuadratic } from './local-quadratic.ts';

export interface SlowAndQuick {
  /** times of the log's rows [s] */
  time_s: Float64Array;
  /** speed at each row [m/s] */
  speed_mps: Float64Array;
  /** where speeds are wanted [s] */
  at: Float64Array;
  /** the channel as an acceleration at each wanted place; its offset may be wrong, and drift [m/s²] */
  quick_mps2: Float64Array;
  /** half window above which the speed decides and below which the channel does [s] */
  crossover_s: number;
}

/**
 * Speed whose slow part is the logged one's and whose quick part is the channel's.
 *
 *     v = u + K ∗ (v_log − u),  u = ∫ a_q dt
 *
 * A complementary filter without delay: K is the local quadratic fit, whose gain is a half at 0.88 / crossover hertz. What
 * an accelerometer gets wrong slowly (offset, slope, drift) is slow in v_log − u as well, so the fit takes it out whole.
 * Source: complementary filter, Brown & Hwang, Introduction to Random Signals and Applied Kalman Filtering (from memory).
 */
export function fuseSpeed({ time_s, speed_mps, at, quick_mps2, crossover_s }: SlowAndQuick): Float64Array {
  const u = new Float64Array(at.length);
  for (let i = 1; i < u.length; i++)
    u[i] = u[i - 1]! + ((quick_mps2[i - 1]! + quick_mps2[i]!) / 2) * (at[i]! - at[i - 1]!);
  let i = 0;
  const left = time_s.map((t, row) => {
    while (i < at.length - 2 && at[i + 1]! <= t) i++;
    const x = t - at[i]!;
    const rise = (quick_mps2[i + 1]! - quick_mps2[i]!) / (at[i + 1]! - at[i]!);
    return speed_mps[row]! - (u[i]! + (quick_mps2[i]! + (rise * x) / 2) * x);
  });
  const slow = localQuadratic({ x: time_s, y: left, at, halfWindow: crossover_s }).value;
  return u.map((value, n) => Math.max(0, value + slow[n]!));
}

/** A line through points, and the share of the variance that it explains. */
export interface Line {
  offset: number;
  scale: number;
  explained: number;
}

/** Least squares y = offset + scale · x over the places where `counts`. */
export function lineThrough(x: Float64Array, y: Float64Array, counts: (i: number) => boolean): Line {
  let n = 0;
  let [sx, sy, sxx, sxy, syy] = [0, 0, 0, 0, 0];
  for (let i = 0; i < x.length; i++) {
    if (!counts(i)) continue;
    const [a, b] = [x[i]!, y[i]!];
    n++;
    sx += a;
    sy += b;
    sxx += a * a;
    sxy += a * b;
    syy += b * b;
  }
  const [vx, vy, cov] = [sxx - (sx * sx) / n, syy - (sy * sy) / n, sxy - (sx * sy) / n];
  const scale = cov / vx;
  return { offset: (sy - scale * sx) / n, scale, explained: (cov * cov) / (vx * vy) };
}
