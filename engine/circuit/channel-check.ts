/** Which logged channels go with the speed, and when: each on its own, before any of them says anything of the lap. */
import { overRest, whereOn } from './brake-log.ts';
import { delayOf, MOST_DELAY_S, shifted } from './delay.ts';
import { localQuadratic } from './local-quadratic.ts';
import { gridOf } from './trace-grid.ts';
import type { TraceColumns } from './trace.ts';

export type ChannelName = 'accel_mps2' | 'brakeFront_Pa' | 'brakeRear_Pa';
export const PRESSURES = ['brakeFront_Pa', 'brakeRear_Pa'] as const;
const CHANNELS = [...PRESSURES, 'accel_mps2'] as const;

/** What was found of a channel: taken, perhaps with its delay taken out, or left out for a reason. */
export interface ChannelFinding {
  channel: ChannelName;
  /** taken out: the channel comes this much after the motion, below 0 before it; 0 where it is in time [s] */
  late_s: number;
  leftOut?: 'flat' | 'other motion' | 'heat';
}

/**
 * A channel that explains less of the motion is not this lap's. Honest pressures of driven laps explain 0.97 or more of the
 * deceleration, accelerometers 0.96 of the acceleration; fading friction and a sliding car leave less [-]
 */
const LEAST_EXPLAINED = 0.7;

/**
 * Less delay than this is none: honest channels, 5 to 50 Hz, 0.05 to 0.2 m/s of noise, seem up to 0.04 s late or early
 * at 5 Hz and 0.03 s at 10 Hz and above [s]
 */
const LEAST_DELAY_S = 0.05;
/** The same where rows are far apart, as a share of the time between them [-] */
const LEAST_DELAY_ROWS = 0.25;

/** A car that gains speed faster than this is on its throttle [m/s²] */
const SPEEDS_UP_MPS2 = 0.5;
/** A line with more of its pressure there than this hangs. Honest ones have under 0.01 [-] */
const MOST_IDLE = 0.05;

/** Smoothed motion needs no more places than this for the test; a fast log would make it slow [s] */
const FINEST_S = 0.05;

export interface Vetted {
  /** the trace with what goes with its speed, in time with it */
  trace: TraceColumns;
  findings: ChannelFinding[];
}

/** Tests each channel against the motion that the speed shows; takes delays out, and channels of another motion. */
export function vetted(
  trace: TraceColumns,
  { time_s, raw_mps, halfWindow_s }: { time_s: Float64Array; raw_mps: Float64Array; halfWindow_s: number },
): Vetted {
  const logged = CHANNELS.filter((channel) => trace[channel]);
  if (logged.length === 0) return { trace, findings: [] };
  const span_s = time_s.at(-1)! - time_s[0]!;
  const at = span_s / (time_s.length - 1) < FINEST_S ? gridOf(time_s, FINEST_S, []) : time_s;
  const fit = (y: Float64Array) => localQuadratic({ x: time_s, y, at, halfWindow: halfWindow_s });
  const change_mps2 = fit(raw_mps).slope;
  // brakes know nothing of the throttle
  const slowing_mps2 = change_mps2.map((a) => Math.min(0, a));
  const least_s = Math.max(LEAST_DELAY_S, (LEAST_DELAY_ROWS * span_s) / time_s.length);
  const findings = logged.map((channel): ChannelFinding => {
    const column = trace[channel]!;
    const isPressure = channel !== 'accel_mps2';
    const out = (leftOut: 'flat' | 'other motion'): ChannelFinding => ({ channel, late_s: 0, leftOut });
    const pressure_Pa = isPressure ? overRest(column) : null;
    if (isPressure && !pressure_Pa) return out('flat');
    const { late_s, line } = delayOf(at, fit(column).value, isPressure ? slowing_mps2 : change_mps2);
    const goes = line.explained > LEAST_EXPLAINED && line.scale > 0 !== isPressure;
    if (!goes || Math.abs(late_s) > MOST_DELAY_S) return out('other motion');
    if (pressure_Pa && idleShare(shifted(time_s, pressure_Pa, late_s, at), change_mps2) > MOST_IDLE)
      return out('other motion');
    return { channel, late_s: Math.abs(late_s) < least_s ? 0 : late_s };
  });
  const taken = findings.filter(({ leftOut }) => !leftOut);
  const { accel_mps2: _accel, brakeFront_Pa: _front, brakeRear_Pa: _rear, ...plain } = trace;
  const inTime = taken.map(({ channel, late_s }) => [channel, shifted(time_s, trace[channel]!, late_s)]);
  return { trace: { ...plain, ...Object.fromEntries(inTime) }, findings };
}

/** Share of all pressure, where the brakes count as on, that is there while the car speeds up. */
function idleShare(pressure_Pa: Float64Array, change_mps2: Float64Array): number {
  const on = whereOn(pressure_Pa);
  let [idle, all] = [0, 0];
  pressure_Pa.forEach((p, i) => {
    if (!on[i]) return;
    all += p;
    if (change_mps2[i]! > SPEEDS_UP_MPS2) idle += p;
  });
  return all > 0 ? idle / all : 0;
}
