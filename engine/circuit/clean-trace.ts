import { brakeLogOf } from './brake-log.ts';
import { vetted, type ChannelFinding } from './channel-check.ts';
import { despike } from './despike.ts';
import { noiseOf, speedHalfWindow, type Noise } from './fit-window.ts';
import { localQuadratic } from './local-quadratic.ts';
import { fuseSpeed } from './quick-channel.ts';
import { accelerometer, brakesOn, brakesQuick, changeOf, type Smooth } from './sharpen.ts';
import type { SpeedProfile } from './speed-profile.ts';
import { gridOf } from './trace-grid.ts';
import type { TraceColumns } from './trace.ts';

export interface CleanOptions {
  /** half of the window of the local fit; from the noise of the speed if absent [s] */
  halfWindow_s?: number;
  /** spacing of the result [s] */
  step_s?: number;
  /** the channels were tested before and are in time with the speed */
  isVetted?: boolean;
}

const STEP_S = 0.05;

/** A measured lap, and which channels beside the speed it was made from. */
export interface CleanTrace extends SpeedProfile {
  used: { accel: boolean; pressure: boolean };
  findings: ChannelFinding[];
}

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
 * Where the log has a quicker channel, it sharpens what the smoothing blurs: brake pressure the ends of braking, or else an
 * accelerometer everything. Pressure counts first: no slope, pitch or vibration is in it, and its noise is a tenth. It also says
 * where brakes are on, and steps end there.
 *
 * Acceleration is the difference of the clean speed, so that force times distance is the change of kinetic energy.
 * Distance is the integral of the clean speed; curvature is not known and 0.
 */
export function cleanTrace(logged: TraceColumns, options: CleanOptions = {}): CleanTrace {
  const time_s = logged.time_s ?? timeFromDistance(logged.distance_m!, logged.speed_mps);
  const span_s = time_s.at(-1)! - time_s[0]!;
  const raw_mps = despike(logged.speed_mps);
  const wanted_s = options.halfWindow_s ?? windowFor(noiseOf(raw_mps, span_s));
  const halfWindow_s = Math.max(wanted_s, (LEAST_INTERVALS * span_s) / (time_s.length - 1));
  const { trace, findings } = options.isVetted
    ? { trace: logged, findings: [] }
    : vetted(logged, { time_s, raw_mps, halfWindow_s });
  const log = brakeLogOf(trace, time_s);
  const at = gridOf(time_s, options.step_s ?? STEP_S, log?.phases ?? []);

  const smooth: Smooth = (values, width_s) =>
    localQuadratic({ x: time_s, y: values, at, halfWindow: width_s }).value;
  const slow_mps = smooth(raw_mps, halfWindow_s).map((v) => Math.max(0, v));
  const slope = slopeOf(trace, smooth, integral(at, slow_mps));
  const known = { trace, at, slow_mps, smooth, halfWindow_s, span_s };
  const pressed = log && brakesQuick(known, log);
  const quick = pressed ?? accelerometer(known, slope);
  const speed_mps = quick ? fuseSpeed({ time_s, speed_mps: raw_mps, at, ...quick }) : slow_mps;
  return {
    distance_m: integral(at, speed_mps),
    time_s: at.map((t) => t - at[0]!),
    speed_mps,
    accel_mps2: changeOf(at, speed_mps),
    curvature_pm: new Float64Array(at.length),
    slope,
    ...(log ? { brakes: brakesOn(log, time_s, at) } : {}),
    used: { accel: quick !== null && !pressed, pressure: log !== null },
    findings,
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

/** Altitude is differenced over seconds, not samples: a logger's altitude wanders by decimetres. */
const ALTITUDE_HALF_WINDOW_S = 2;

function slopeOf(trace: TraceColumns, smooth: Smooth, distance_m: Float64Array): Float64Array {
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
