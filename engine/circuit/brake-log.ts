/** What logged brake pressure says of a lap: when the brakes are on, and how the axles share. */
import type { TraceColumns } from './trace.ts';

/**
 * Rest is the lower quartile of a lap: brakes are off for most of it. High is exceeded in one row of a hundred, so one false
 * row sets no scale. Common practice, no source [-]
 */
const REST_QUANTILE = 0.25;
const HIGH_QUANTILE = 0.99;

/** The brakes are on above this share of the way from rest to high; pads begin to bite there. Common practice, no source [-] */
const ON_SHARE = 0.03;

/** A channel whose high is no more than this above its rest says nothing [Pa] */
const LEAST_HIGH_PA = 2e5;

/** Two phases closer than this, or a phase shorter, are the threshold's own noise [s] */
const LEAST_S = 0.06;

export interface Phase {
  from_s: number;
  to_s: number;
}

export interface BrakeLog {
  /** pressure over rest of both lines together, at each row [Pa] */
  pressure_Pa: Float64Array;
  /** pressure over rest of each line, where both are logged */
  lines: { front_Pa: Float64Array; rear_Pa: Float64Array } | null;
  /** when the brakes are on, in order */
  phases: Phase[];
}

/** Reads the pressure columns of a trace; null where there are none or they never rise. */
export function brakeLogOf(
  { brakeFront_Pa, brakeRear_Pa }: TraceColumns,
  time_s: Float64Array,
): BrakeLog | null {
  const [front_Pa, rear_Pa] = [brakeFront_Pa, brakeRear_Pa].map((column) => column && overRest(column));
  const known = [front_Pa, rear_Pa].filter((line) => line !== undefined && line !== null);
  if (known.length === 0) return null;
  const pressure_Pa = known.reduce((sum, line) => sum.map((p, i) => p + line[i]!));
  const lines = front_Pa && rear_Pa ? { front_Pa, rear_Pa } : null;
  return { pressure_Pa, lines, phases: phasesAbove(onAbove(pressure_Pa), time_s, pressure_Pa) };
}

/** How far the high of a column is above its rest [Pa] */
const riseOf = (column: Float64Array): number =>
  quantile(column, HIGH_QUANTILE) - quantile(column, REST_QUANTILE);

/** A line's pressure over its rest; null where it never rises. */
export function overRest(column: Float64Array): Float64Array | null {
  if (!(riseOf(column) > LEAST_HIGH_PA)) return null;
  const rest = quantile(column, REST_QUANTILE);
  return column.map((p) => Math.max(0, p - rest));
}

/** The pressure over rest above which brakes are on [Pa] */
const onAbove = (pressure_Pa: Float64Array): number => ON_SHARE * quantile(pressure_Pa, HIGH_QUANTILE);

/** 1 at each row at which brakes are on. */
export function whereOn(pressure_Pa: Float64Array): Uint8Array {
  const on_Pa = onAbove(pressure_Pa);
  return Uint8Array.from(pressure_Pa, (p) => (p > on_Pa ? 1 : 0));
}

function quantile(column: Float64Array, share: number): number {
  return column.toSorted()[Math.round(share * (column.length - 1))]!;
}

/** Stretches above a level, their ends interpolated between rows. */
function phasesAbove(level: number, time_s: Float64Array, values: Float64Array): Phase[] {
  const crossing = (i: number): number =>
    time_s[i - 1]! +
    ((level - values[i - 1]!) / (values[i]! - values[i - 1]!)) * (time_s[i]! - time_s[i - 1]!);
  const phases: Phase[] = [];
  for (let i = 0; i < values.length; i++) {
    if (values[i]! <= level) continue;
    const from_s = i === 0 ? time_s[0]! : crossing(i);
    while (i < values.length && values[i]! > level) i++;
    const to_s = i === values.length ? time_s.at(-1)! : crossing(i);
    const before = phases.at(-1);
    if (before && from_s - before.to_s < LEAST_S) before.to_s = to_s;
    else phases.push({ from_s, to_s });
  }
  return phases.filter(({ from_s, to_s }) => to_s - from_s >= LEAST_S);
}
