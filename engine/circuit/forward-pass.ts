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
  for (let k = 0, i = from; k < n; k++) {
    const top = ceiling[i + 1]!;
    const isLast = i + 1 === n;
    const half = Math.max(CRAWL, now + step_m * pace.throttle(now, i));
    const flatOut = Math.min(top, Math.max(CRAWL, now + 2 * step_m * pace.throttle(half, i)));
    let next = flatOut;
    if (pedal === 'lifted') {
      const slower = lift.after(now, i, since_s, step_m);
      if (since_s >= lift.duration_s || slower >= top * (1 - ON_CEILING)) pedal = 'brake';
      else {
        next = slower;
        since_s += timeOver(step_m, now, next);
      }
    } else if (pedal === 'throttle' || flatOut < top || flatOut >= now + 2 * step_m * pace.coast(now, i)) {
      pedal = 'throttle';
      const node = isLast ? 0 : i + 1;
      const late = (isLast && !closed) || lift.isFree(node, flatOut) ? 0 : lift.excess(node, flatOut);
      if (late > 0) {
        const early = Math.min(0, lift.excess(i, now));
        const share = early / (early - late);
        const at = now + share * (flatOut - now);
        const rest_m = step_m * (1 - share);
        next = Math.min(top, lift.after(at, i, 0, rest_m));
        since_s = timeOver(rest_m, at, next);
        pedal = 'lifted';
      }
    }
    now = next;
    w[i + 1] = now;
    if (closed && isLast) w[0] = now;
    i = isLast ? 0 : i + 1;
  }
}
