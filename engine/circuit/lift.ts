import type { Driver } from '../car/types.ts';
import { CRAWL, type Pace } from './pace.ts';

/** The moments after lifting: neither pedal for a while, then the brake force grows to its full value. */
export interface Lift {
  /** from lifting to full brakes [s] */
  duration_s: number;
  /** square of the speed a distance on, from some time after lifting; midpoint rule [m²/s²] */
  after(w: number, interval: number, since_s: number, distance_m: number): number;
  /** Whether this speed, held, would stay under the ceiling for as long as a lift takes: the usual case, cheap. */
  isFree(node: number, w: number): boolean;
  /**
   * By how much speed squared would break through the ceiling if the driver lifted at this node; above 0 it
   * is too late [m²/s²].
   */
  excess(node: number, w: number): number;
}

export interface Road {
  step_m: number;
  /** highest speed squared at each node, from the backward pass */
  ceiling: Float64Array;
  /** whether the road goes on past the last node */
  closed: boolean;
}

/**
 * Time over a distance at constant acceleration.
 *
 *     t = 2 s / (V₁ + V₂)
 *
 * Source: kinematics of constant acceleration; exact.
 *
 * @param distance_m - distance [m]
 * @param w - square of the speed at its start [m²/s²]
 * @param next - square of the speed at its end, below 0 counts as 0 [m²/s²]
 * @returns time [s]
 *
 * @example
 * timeOver(100, 2500, 900) // => 2.5
 */
export function timeOver(distance_m: number, w: number, next: number): number {
  return (2 * distance_m) / (Math.sqrt(w) + Math.sqrt(Math.max(next, 0)));
}

export function liftOf(pace: Pace, driver: Driver, { step_m, ceiling, closed }: Road): Lift {
  const n = ceiling.length - 1;
  const { coast_s, buildUp_s } = driver;
  const duration_s = coast_s + buildUp_s;

  function slowing(w: number, i: number, since_s: number): number {
    const coast = pace.coast(w, i);
    if (since_s <= coast_s) return coast;
    const brake = Math.min(coast, pace.brake(w, i));
    return coast + Math.min(1, (since_s - coast_s) / buildUp_s) * (brake - coast);
  }

  function after(w: number, i: number, since_s: number, distance_m: number): number {
    const middle_s = since_s + distance_m / (2 * Math.sqrt(w));
    const half = w + distance_m * slowing(w, i, middle_s);
    return Math.max(CRAWL, w + 2 * distance_m * slowing(Math.max(CRAWL, half), i, middle_s));
  }

  function isFree(node: number, w: number): boolean {
    let steps = Math.ceil((duration_s * Math.sqrt(w)) / step_m) + 1;
    for (let i = node + 1; steps > 0; i++, steps--) {
      if (i > n) {
        if (!closed) return true;
        i = 1;
      }
      if (ceiling[i]! < w) return false;
    }
    return true;
  }

  function excess(node: number, w: number): number {
    let worst = -Infinity;
    let since_s = 0;
    for (let i = node; since_s < duration_s; i++) {
      if (i === n) {
        if (!closed) break;
        i = 0;
      }
      const next = after(w, i, since_s, step_m);
      worst = Math.max(worst, next - ceiling[i + 1]!);
      since_s += timeOver(step_m, w, next);
      w = next;
    }
    return worst;
  }

  return { duration_s, after, isFree, excess };
}
