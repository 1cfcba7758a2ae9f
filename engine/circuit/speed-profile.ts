import { topSpeed } from '../car/top-speed.ts';
import { backwardPass, lowestOf } from './backward-pass.ts';
import { forwardPass } from './forward-pass.ts';
import { liftOf } from './lift.ts';
import { CRAWL, paceOf } from './pace.ts';
import type { Pace, PaceRequest } from './pace.ts';

/**
 * Speed along a lap, on nodes. `accel_mps2[i]` is the mean over the interval from node i to i + 1, exact for
 * the change of kinetic energy (ΔV² / 2Δs); the last entry repeats the one before.
 */
export interface SpeedProfile {
  distance_m: Float64Array;
  time_s: Float64Array;
  speed_mps: Float64Array;
  accel_mps2: Float64Array;
  /** left positive [1/m] */
  curvature_pm: Float64Array;
  /** rise over run [-] */
  slope: Float64Array;
  /** only of a measured lap with logged brake pressure */
  brakes?: BrakesByInterval;
}

/** What a log says of the brakes on the interval from node i to i + 1. It belongs to the place, however fast it is driven. */
export interface BrakesByInterval {
  /** 1 where the brakes are on */
  pressed: Uint8Array;
  /** pressure in each line over its own mean while the brakes are on, where both are logged [-] */
  front?: Float64Array;
  rear?: Float64Array;
}

export interface ProfileRequest extends PaceRequest {
  /** speed at the line; absent: a flying lap, as fast as the lap before ended. Faster than the lap allows: brakes down to it */
  entry_mps?: number;
  /** speed to be down to at the end of the lap; absent: the lap goes on */
  exit_mps?: number;
  /** how far before the end of the lap that speed holds already, as in a pit lane; absent: at the end only [m] */
  lane_m?: number;
}

/** Laps driven at most until a flying lap repeats itself; only a lap without corners needs more than one. */
const LAPS_TO_SETTLE = 50;

/**
 * Quasi-steady speed profile of one lap: a backward pass under the limits of grip gives the highest speed from
 * which everything ahead can be met, a forward pass drives under it.
 *
 * Flying (no entry, no exit), out-lap (entry), in-lap (exit, perhaps a lane before it), or both. Safety car: a speed cap and a driver
 * with small shares.
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics, 1995, ch. 9 (from memory).
 */
export function speedProfile(request: ProfileRequest): SpeedProfile {
  const { layout, driver, entry_mps, exit_mps, lane_m = 0 } = request;
  const pace = paceOf(request);
  const { step_m } = layout;
  const n = pace.limit.length - 1;
  const w = new Float64Array(n + 1);
  const drive = (ceiling: Float64Array, closed: boolean, from: number, start: number): void => {
    const lift = liftOf(pace, driver, { step_m, ceiling, closed });
    forwardPass({ pace, lift, step_m, ceiling, closed, from, entry: start, w });
  };

  let entry = entry_mps === undefined ? undefined : entry_mps ** 2;
  if (entry === undefined) {
    const ceiling = backwardPass(pace, step_m);
    const from = lowestOf(ceiling);
    let start = Math.min(ceiling[from]!, topSpeed(request.car, request.air) ** 2);
    for (let lap = 0; lap < LAPS_TO_SETTLE; lap++) {
      drive(ceiling, true, from, start);
      const end = w[from]!;
      const settled = Math.abs(end - start) <= 1e-6 * start;
      start = end;
      if (settled) break;
    }
    entry = w[0]!;
  }
  if (entry_mps !== undefined || exit_mps !== undefined) {
    const closed = exit_mps === undefined;
    if (!closed)
      // the lane is no shorter for the grid: the point before it holds its speed too
      pace.limit.forEach((w, i) => {
        if ((n - i - 1) * step_m < lane_m) pace.limit[i] = Math.min(w, exit_mps ** 2);
      });
    const ceiling = backwardPass(pace, step_m, closed ? undefined : exit_mps ** 2);
    drive(ceiling, closed, 0, entry);
    if (closed) w[0] = Math.min(entry, ceiling[0]!);
    slowDownFrom(entry, { pace, step_m, w });
  }
  return {
    ...motionOf(w, step_m),
    distance_m: layout.distance_m,
    curvature_pm: layout.curvature_pm,
    slope: layout.slope,
  };
}

/** Speed cannot jump at the line: a car that arrives too fast for the lap brakes until it meets the lap's speed. */
function slowDownFrom(
  entry: number,
  { pace, step_m, w }: { pace: Pace; step_m: number; w: Float64Array },
): void {
  let now = entry;
  for (let i = 0; i < w.length - 1 && now > w[i]!; i++) {
    w[i] = now;
    const half = Math.max(CRAWL, now + step_m * pace.brake(now, i));
    now = Math.max(CRAWL, now + 2 * step_m * pace.brake(half, i));
  }
}

/** Speed, time and acceleration from squares of speed on a uniform grid, acceleration held over each step. */
function motionOf(
  w: Float64Array,
  step_m: number,
): Pick<SpeedProfile, 'speed_mps' | 'time_s' | 'accel_mps2'> {
  const n = w.length - 1;
  const speed_mps = new Float64Array(n + 1);
  speed_mps[0] = Math.sqrt(w[0]!);
  const time_s = new Float64Array(n + 1);
  const accel_mps2 = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) {
    speed_mps[i + 1] = Math.sqrt(w[i + 1]!);
    time_s[i + 1] = time_s[i]! + (2 * step_m) / (speed_mps[i]! + speed_mps[i + 1]!);
    accel_mps2[i] = (w[i + 1]! - w[i]!) / (2 * step_m);
  }
  accel_mps2[n] = accel_mps2[n - 1]!;
  return { speed_mps, time_s, accel_mps2 };
}
