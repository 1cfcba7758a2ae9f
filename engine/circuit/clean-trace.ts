import { despike } from './despike.ts';
import { noiseOf, speedHalfWindow, type Noise } from './fit-window.ts';
import { localQuadratic } from './local-quadratic.ts';
import type { SpeedProfile } from './speed-profile.ts';
import type { TraceColumns } from './trace.ts';

export interface CleanOptions {
  /** half of the window of the local fit; from the noise of the speed if absent [s] */
  halfWindow_s?: number;
  /** spacing of the result [s] */
  step_s?: number;
}

const STEP_S = 0.05;

/** The window is as wide as the noise asks: at 10 Hz and 0.1 m/s half of it is 0.59 s. A foot needs some 0.2 s on a pedal. [s] */
const LEAST_HALF_WINDOW_S = 0.3;
const MOST_HALF_WINDOW_S = 0.8;

/** A quadratic needs three samples; this many intervals either side hold five. */
const LEAST_INTERVALS = 2.5;

/**
 * A measured speed trace as a speed profile: spikes out, a local quadratic through the noise, uniform steps in
 * time. Heat must not come from noise, nor be lost with it: the smoothing keeps ramps and curves of speed as
 * they are, and what noise is left acts as braking only below the deceleration of a lifted throttle.
 *
 * Acceleration is the difference of the clean speed, so that force times distance is the change of kinetic energy.
 * Distance is the integral of the clean speed; curvature is not known and 0.
 */
export function cleanTrace(trace: TraceColumns, options: CleanOptions = {}): SpeedProfile {
  const time_s = trace.time_s ?? timeFromDistance(trace.distance_m!, trace.speed_mps);
  const span_s = time_s.at(-1)! - time_s[0]!;
  const interval_s = span_s / (time_s.length - 1);
  const raw_mps = despike(trace.speed_mps);
  const wanted_s = options.halfWindow_s ?? windowFor(noiseOf(raw_mps, span_s));
  const halfWindow = Math.max(wanted_s, LEAST_INTERVALS * interval_s);
  const n = Math.max(2, Math.round(span_s / (options.step_s ?? STEP_S)));
  const at = Float64Array.from({ length: n + 1 }, (_, i) => time_s[0]! + (i * span_s) / n);

  const smooth = (values: Float64Array, width_s: number): Float64Array =>
    localQuadratic({ x: time_s, y: values, at, halfWindow: width_s }).value;
  const speed_mps = smooth(raw_mps, halfWindow).map((v) => Math.max(0, v));
  const distance_m = integral(at, speed_mps);
  return {
    distance_m,
    time_s: at.map((t) => t - at[0]!),
    speed_mps,
    accel_mps2: changeOf(at, speed_mps),
    curvature_pm: new Float64Array(n + 1),
    slope: slopeOf(trace, smooth, distance_m),
  };
}

const windowFor = (noise: Noise): number =>
  Math.min(MOST_HALF_WINDOW_S, Math.max(LEAST_HALF_WINDOW_S, speedHalfWindow(noise)));

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

/** Change over each interval per unit of x; the last entry repeats the one before. */
function changeOf(x: Float64Array, y: Float64Array): Float64Array {
  const n = x.length - 1;
  return x.map((_, k) => {
    const i = Math.min(k, n - 1);
    return (y[i + 1]! - y[i]!) / (x[i + 1]! - x[i]!);
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
