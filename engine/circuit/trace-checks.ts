import { mpsFromKmh } from '../units.ts';
import type { UsedColumn } from './trace-header.ts';
import { drivenLength, extentOf } from './trace-laps.ts';
import type { TraceColumns } from './trace.ts';

const MAX_KMH = 400;
const MIN_ROWS = 50;
/** Laps of circuits for cars, with room either side. */
const LAP_M = { least: 500, most: 30_000 };
/** Speed and distance may disagree by this before a unit must be wrong. */
const AGREEMENT = 0.1;
/** A hole longer than this may hide a stop. */
const GAP_S = 1;
const GAP_INTERVALS = 5;

/** What is wrong with one lap of a trace; `rows` are the file's row numbers, `used` the columns' names. */
export function problemsOf(
  trace: TraceColumns,
  rows: readonly number[],
  used: readonly UsedColumn[],
): string[] {
  const column = (role: UsedColumn['role']): UsedColumn | undefined => used.find((c) => c.role === role);
  const where = (i: number, role: UsedColumn['role']): string =>
    `row ${rows[i]}, column ${column(role)?.name}`;
  const written = (value: number, role: UsedColumn['role']): string =>
    `${+(value / column(role)!.factor).toPrecision(6)}`;
  const increasing = (values: Float64Array | undefined, role: 'time' | 'distance'): string[] =>
    values
      ? eachRow(values, (value, i) => {
          if (i === 0 || value > values[i - 1]!) return undefined;
          const before = written(values[i - 1]!, role);
          return `${where(i, role)}: expected more than ${before}, got ${written(value, role)}`;
        })
      : [];
  const limit_mps = mpsFromKmh(MAX_KMH);
  const speeds = eachRow(trace.speed_mps, (v, i) =>
    v >= 0 && v <= limit_mps
      ? undefined
      : `${where(i, 'speed')}: expected 0 to ${MAX_KMH} km/h, got ${written(v, 'speed')} ${column('speed')!.unit}`,
  );
  const found = [...increasing(trace.time_s, 'time'), ...increasing(trace.distance_m, 'distance'), ...speeds];
  if (rows.length < MIN_ROWS)
    found.push(`rows: expected at least ${MIN_ROWS} in one lap, got ${rows.length}`);
  return found.length > 0 ? found : [...gaps(trace, rows), ...extentProblems(trace)];
}

function eachRow(values: Float64Array, check: (value: number, i: number) => string | undefined): string[] {
  return Array.from(values, check).filter((problem) => problem !== undefined);
}

function gaps({ time_s }: TraceColumns, rows: readonly number[]): string[] {
  if (!time_s) return [];
  const usual_s = (time_s.at(-1)! - time_s[0]!) / (time_s.length - 1);
  const most_s = Math.max(GAP_S, GAP_INTERVALS * usual_s);
  return eachRow(time_s, (t, i) => {
    const gap_s = i > 0 ? t - time_s[i - 1]! : 0;
    return gap_s > most_s ? `row ${rows[i]}: nothing for ${gap_s.toFixed(1)} s before it` : undefined;
  });
}

function extentProblems(trace: TraceColumns): string[] {
  const { length_m } = extentOf(trace);
  const { least, most } = LAP_M;
  if (length_m < least || length_m > most) {
    return [`lap length: expected ${least} to ${most} m, got ${length_m.toFixed(0)} m`];
  }
  if (!trace.time_s || !trace.distance_m) return [];
  const driven_m = drivenLength(trace.time_s, trace.speed_mps);
  if (Math.abs(driven_m / length_m - 1) <= AGREEMENT) return [];
  const [by, is] = [driven_m.toFixed(0), length_m.toFixed(0)];
  return [
    `speed and distance disagree: speed over time makes ${by} m, the distance column ${is} m (wrong unit?)`,
  ];
}
