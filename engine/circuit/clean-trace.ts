import { brakeLogOf, type BrakeLog } from './brake-log.ts';
import { despike } from './despike.ts';
import { accelHalfWindow, noiseOf, speedHalfWindow, type Noise } from './fit-window.ts';
import { localQuadratic } from './local-quadratic.ts';
import { fuseSpeed, lineThrough } from './quick-channel.ts';
import type { BrakesByInterval, SpeedProfile } from './speed-profile.ts';
import { gridOf, linesOn, pressedOn } from './trace-grid.ts';
import type { TraceColumns } from './trace.ts';
import { slopeForce } from '../car/longitudinal.ts';

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

/** Half window above which the speed decides and below which an accelerometer does: they cross at 0.6 Hz [s] */
const ACCEL_CROSSOVER_S = 1.5;

/** A channel that explains less than this of the speed's own acceleration, or is so far off in scale, is not used [-] */
const LEAST_EXPLAINED = 0.7;
const SCALE_RANGE = [0.6, 1.6] as const;

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
export function cleanTrace(trace: TraceColumns, options: CleanOptions = {}): SpeedProfile {
  const time_s = trace.time_s ?? timeFromDistance(trace.distance_m!, trace.speed_mps);
  const span_s = time_s.at(-1)! - time_s[0]!;
  const raw_mps = despike(trace.speed_mps);
  const wanted_s = options.halfWindow_s ?? windowFor(noiseOf(raw_mps, span_s));
  const halfWindow_s = Math.max(wanted_s, (LEAST_INTERVALS * span_s) / (time_s.length - 1));
  const log = brakeLogOf(trace, time_s);
  const at = gridOf(time_s, options.step_s ?? STEP_S, log?.phases ?? []);

  const smooth: Smooth = (values, width_s) =>
    localQuadratic({ x: time_s, y: values, at, halfWindow: width_s }).value;
  const slow_mps = smooth(raw_mps, halfWindow_s).map((v) => Math.max(0, v));
  const slope = slopeOf(trace, smooth, integral(at, slow_mps));
  const known = { trace, at, slow_mps, smooth, halfWindow_s, span_s };
  const quick = (log && brakes(known, log)) ?? accelerometer(known, slope);
  const speed_mps = quick ? fuseSpeed({ time_s, speed_mps: raw_mps, at, ...quick }) : slow_mps;
  return {
    distance_m: integral(at, speed_mps),
    time_s: at.map((t) => t - at[0]!),
    speed_mps,
    accel_mps2: changeOf(at, speed_mps),
    curvature_pm: new Float64Array(at.length),
    slope,
    ...(log ? { brakes: brakesOn(log, time_s, at) } : {}),
  };
}

const windowFor = (noise: Noise): number =>
  Math.min(MOST_HALF_WINDOW_S, Math.max(LEAST_HALF_WINDOW_S, speedHalfWindow(noise)));

type Smooth = (values: Float64Array, width_s: number) => Float64Array;

interface Known {
  trace: TraceColumns;
  at: Float64Array;
  slow_mps: Float64Array;
  smooth: Smooth;
  halfWindow_s: number;
  span_s: number;
}

interface Quick {
  quick_mps2: Float64Array;
  crossover_s: number;
}

/**
 * The accelerometer as acceleration along the road: what it feels less the weight along the slope, on the scale that the
 * speed has. Pitch grows with the acceleration and so is part of the scale. Null without one, or if it follows some
 * other motion.
 */
function accelerometer(
  { trace, at, slow_mps, smooth, halfWindow_s, span_s }: Known,
  slope: Float64Array,
): Quick | null {
  if (!trace.accel_mps2) return null;
  const weight = slope.map((i) => slopeForce(1, i));
  const along = (width_s: number): Float64Array =>
    smooth(trace.accel_mps2!, width_s).map((a, i) => a - weight[i]!);
  const crossover_s = Math.max(ACCEL_CROSSOVER_S, halfWindow_s);
  const line = lineThrough(changeOf(at, slow_mps), along(halfWindow_s), () => true);
  const [least, most] = SCALE_RANGE;
  if (!(line.explained > LEAST_EXPLAINED && line.scale > least && line.scale < most)) return null;
  const felt = along(accelHalfWindow(noiseOf(trace.accel_mps2, span_s)));
  return { quick_mps2: felt.map((a) => (a - line.offset) / line.scale), crossover_s };
}

/**
 * Brake pressure as the part of the acceleration that it explains, in braking. It knows nothing of the throttle, so the
 * speed decides all that its own smoothing lets through. Null where pressure does not slow this car.
 */
function brakes({ at, slow_mps, smooth, halfWindow_s }: Known, log: BrakeLog): Quick | null {
  const slow_Pa = smooth(log.pressure_Pa, halfWindow_s);
  const pressed = pressedOn(at, log.phases);
  const line = lineThrough(slow_Pa, changeOf(at, slow_mps), (i) => pressed[i] === 1);
  if (!(line.explained > LEAST_EXPLAINED && line.scale < 0)) return null;
  const quick_Pa = smooth(log.pressure_Pa, 0);
  return { quick_mps2: quick_Pa.map((p) => line.scale * p), crossover_s: halfWindow_s };
}

function brakesOn({ phases, lines }: BrakeLog, time_s: Float64Array, at: Float64Array): BrakesByInterval {
  const pressed = pressedOn(at, phases);
  return { pressed, ...(lines ? linesOn({ time_s, at, pressed, ...lines }) : {}) };
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
