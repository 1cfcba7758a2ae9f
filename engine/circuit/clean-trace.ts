import { despike } from './despike.ts';
import { localQuadratic, type Fitted } from './local-quadratic.ts';
import type { SpeedProfile } from './speed-profile.ts';
import type { TraceColumns } from './trace.ts';

export interface CleanOptions {
  /** half of the window of the local fit [s] */
  halfWindow_s?: number;
  /** spacing of the result [s] */
  step_s?: number;
}

/**
 * Half window of the fit. At 10 Hz it holds 7 to 9 samples and lets 0.1 m/s of noise through as some 0.2 m/s² of
 * acceleration, far below what a lifted throttle already gives; a brake's onset is blurred by 0.1-0.2 s.
 */
const HALF_WINDOW_S = 0.4;
const STEP_S = 0.05;

/** A quadratic needs three samples; this many intervals either side hold five. */
const LEAST_INTERVALS = 2.5;

/**
 * A measured speed trace as a speed profile: spikes out, a local quadratic through the noise, uniform steps in
 * time. Heat must not come from noise, nor be lost with it: the smoothing keeps ramps and curves of speed as
 * they are, and what noise is left acts as braking only below the deceleration of a lifted throttle.
 *
 * Distance is the integral of the clean speed; curvature is not known and 0.
 */
export function cleanTrace(trace: TraceColumns, options: CleanOptions = {}): SpeedProfile {
  const time_s = trace.time_s ?? timeFromDistance(trace.distance_m!, trace.speed_mps);
  const span_s = time_s.at(-1)! - time_s[0]!;
  const interval_s = span_s / (time_s.length - 1);
  const halfWindow = Math.max(options.halfWindow_s ?? HALF_WINDOW_S, LEAST_INTERVALS * interval_s);
  const n = Math.max(2, Math.round(span_s / (options.step_s ?? STEP_S)));
  const at = Float64Array.from({ length: n + 1 }, (_, i) => time_s[0]! + (i * span_s) / n);

  const smooth = (values: Float64Array, width_s: number): Float64Array =>
    localQuadratic({ x: time_s, y: values, at, halfWindow: width_s }).value;
  const speed = localQuadratic({ x: time_s, y: despike(trace.speed_mps), at, halfWindow });
  const speed_mps = speed.value.map((v) => Math.max(0, v));
  const distance_m = integral(at, speed_mps);
  return {
    distance_m,
    time_s: at.map((t) => t - at[0]!),
    speed_mps,
    accel_mps2: accelerationOf(at, speed),
    curvature_pm: new Float64Array(n + 1),
    slope: slopeOf(trace, smooth, distance_m),
  };
}

/** Time along a trace that has distance only: constant acceleration between samples. */
export function timeFromDistance(distance_m: Float64Array, speed_mps: Float64Array): Float64Array {
  const time_s = new Float64Array(distance_m.length);
  for (let i = 1; i < time_s.length; i++) {
    const mean_mps = Math.max(0.1, (speed_mps[i - 1]! + speed_mps[i]!) / 2);
    time_s[i] = time_s[i - 1]! + (distance_m[i]! - distance_m[i - 1]!) / mean_mps;
  }
  return time_s;
}

function integral(x: Float64Array, y: Float64Array): Float64Array {
  const sum = new Float64Array(x.length);
  for (let i = 1; i < x.length; i++) sum[i] = sum[i - 1]! + ((y[i - 1]! + y[i]!) / 2) * (x[i]! - x[i - 1]!);
  return sum;
}

/**
 * Weight of the fit's own slopes against differences of its values. Where a brake goes on or off, slopes round the corner
 * off (2.3 % too little heat in a lap) and differences overshoot (0.6 % too much); this share makes neither. Set on driven
 * laps of the shipped circuits.
 */
const SLOPE_WEIGHT = 0.2;

/** Mean acceleration of each interval; the last entry repeats the one before. */
function accelerationOf(time_s: Float64Array, { value, slope }: Fitted): Float64Array {
  const n = time_s.length - 1;
  return time_s.map((_, k) => {
    const i = Math.min(k, n - 1);
    const difference = (value[i + 1]! - value[i]!) / (time_s[i + 1]! - time_s[i]!);
    return difference + SLOPE_WEIGHT * ((slope[i]! + slope[i + 1]!) / 2 - difference);
  });
}

/** Altitude is differenced over seconds, not samples: a logger's altitude wanders by decimetres. */
const ALTITUDE_HALF_WINDOW_S = 2;

function slopeOf(
  trace: TraceColumns,
  smooth: (values: Float64Array, width_s: number) => Float64Array,
  distance_m: Float64Array,
): Float64Array {
  if (trace.slope) return smooth(trace.slope, ALTITUDE_HALF_WINDOW_S);
  if (!trace.height_m) return new Float64Array(distance_m.length);
  const height_m = smooth(trace.height_m, ALTITUDE_HALF_WINDOW_S);
  const last = height_m.length - 1;
  return height_m.map((_, i) => {
    const from = Math.max(0, i - 1);
    const to = Math.min(last, i + 1);
    const run_m = distance_m[to]! - distance_m[from]!;
    return run_m > 0.1 ? (height_m[to]! - height_m[from]!) / run_m : 0;
  });
}
