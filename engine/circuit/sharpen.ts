/** The quick channels of a log beside its speed: which are fit to use, and what they say of acceleration and of the brakes. */
import { slopeForce } from '../car/longitudinal.ts';
import type { BrakeLog } from './brake-log.ts';
import { accelHalfWindow, noiseOf } from './fit-window.ts';
import { lineThrough } from './quick-channel.ts';
import type { BrakesByInterval } from './speed-profile.ts';
import { linesOn, pressedOn } from './trace-grid.ts';
import type { TraceColumns } from './trace.ts';

/** Half window above which the speed decides and below which an accelerometer does: they cross at 0.6 Hz [s] */
const ACCEL_CROSSOVER_S = 1.5;

/** A channel that explains less than this of the speed's own acceleration, or is so far off in scale, sharpens nothing [-] */
const LEAST_EXPLAINED = 0.7;
const SCALE_RANGE = [0.6, 1.6] as const;

export type Smooth = (values: Float64Array, width_s: number) => Float64Array;

export interface Known {
  trace: TraceColumns;
  at: Float64Array;
  slow_mps: Float64Array;
  smooth: Smooth;
  halfWindow_s: number;
  span_s: number;
}

export interface Quick {
  quick_mps2: Float64Array;
  crossover_s: number;
}

/**
 * The accelerometer as acceleration along the road: what it feels less the weight along the slope, on the scale that the
 * speed has. Pitch grows with the acceleration and so is part of the scale. Null without one, or if it follows some
 * other motion.
 */
export function accelerometer(
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
export function brakesQuick({ at, slow_mps, smooth, halfWindow_s }: Known, log: BrakeLog): Quick | null {
  const slow_Pa = smooth(log.pressure_Pa, halfWindow_s);
  const pressed = pressedOn(at, log.phases);
  const line = lineThrough(slow_Pa, changeOf(at, slow_mps), (i) => pressed[i] === 1);
  if (!(line.explained > LEAST_EXPLAINED && line.scale < 0)) return null;
  const quick_Pa = smooth(log.pressure_Pa, 0); // no width: straight from row to row
  return { quick_mps2: quick_Pa.map((p) => line.scale * p), crossover_s: halfWindow_s };
}

/** The log's phases and lines, by the intervals between the nodes. */
export function brakesOn(
  { phases, lines }: BrakeLog,
  time_s: Float64Array,
  at: Float64Array,
): BrakesByInterval {
  const pressed = pressedOn(at, phases);
  return { pressed, ...(lines ? linesOn({ time_s, at, pressed, ...lines }) : {}) };
}

/** Change over each interval per unit of x; the last entry repeats the one before. */
export function changeOf(x: Float64Array, y: Float64Array): Float64Array {
  const n = x.length - 1;
  return x.map((_, k) => {
    const i = Math.min(k, n - 1);
    return (y[i + 1]! - y[i]!) / (x[i + 1]! - x[i]!);
  });
}
