import { timeOver } from './lift.ts';
import type { Lift, Road } from './lift.ts';
import { CRAWL, type Pace } from './pace.ts';

/** So close to the ceiling a driver is on it, as a share of speed squared: 0.05 % of speed. */
const ON_CEILING = 1e-3;

export interface ForwardRequest extends Road {
  pace: Pace;
  lift: Lift;
  /** node and speed squared to start from; the pass goes once over the grid, past the line if closed */
  from: number;
  entry: number;
  /** speed squared at each node, written */
  w: Float64Array;
}

/**
 * Drives once over the grid under a ceiling of speeds: full throttle until the last moment at which lifting
 * still keeps under the ceiling, then down on to it and along it. A closed lap leaves its end at the node it started from.
 *
 * The moment of lifting is found inside its step by interpolating the excess, so that the profile moves
 * smoothly with every parameter. Midpoint rule on the throttle, second order in the step.
 */
export function forwardPass({ pace, lift, step_m, ceiling, closed, from, entry, w }: ForwardRequest): void {
  const n = ceiling.length - 1;
  let now = Math.min(entry, ceiling[from]!);
  let pedal: 'throttle' | 'lifted' | 'brake' = now < ceiling[from]! ? 'throttle' : 'brake';
  let since_s = 0;
  w[from] = now;

  function onThrottle(i: number): number {
    const half = Math.max(CRAWL, now + step_m * pace.throttle(now, i));
    return Math.min(ceiling[i + 1]!, Math.max(CRAWL, now + 2 * step_m * pace.throttle(half, i)));
  }
  function liftInside(i: number, flatOut: number, late: number): number {
    const early = Math.min(0, lift.excess(i, now));
    const share = early / (early - late);
    const at = now + share * (flatOut - now);
    const rest_m = step_m * (1 - share);
    const next = Math.min(ceiling[i + 1]!, lift.after(at, i, { since_s: 0, distance_m: rest_m }));
    since_s = timeOver(rest_m, at, next);
    pedal = 'lifted';
    return next;
  }
  function slowDown(i: number): number {
    const next = lift.after(now, i, { since_s, distance_m: step_m });
    if (since_s >= lift.duration_s || next >= ceiling[i + 1]! * (1 - ON_CEILING)) {
      pedal = 'brake';
      return onThrottle(i);
    }
    since_s += timeOver(step_m, now, next);
    return next;
  }
  function step(i: number): number {
    if (pedal === 'lifted') return slowDown(i);
    const next = onThrottle(i);
    const isBraking = next === ceiling[i + 1]! && next < now + 2 * step_m * pace.coast(now, i);
    if (pedal === 'brake' && isBraking) return next;
    pedal = 'throttle';
    if ((!closed && i + 1 === n) || lift.isFree((i + 1) % n, next)) return next;
    const late = lift.excess((i + 1) % n, next);
    return late > 0 ? liftInside(i, next, late) : next;
  }

  for (let k = 0; k < n; k++) {
    const i = (from + k) % n;
    now = step(i);
    w[i + 1] = now;
    if (closed && i + 1 === n) w[0] = now;
  }
}
