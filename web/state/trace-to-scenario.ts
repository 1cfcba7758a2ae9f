/** A lap that was read from a logger's file, as the scenario keeps it. */
import type { EngineDoor, Scenario } from '../../engine/index.ts';
import { kmh } from '../display/units.ts';

export type Reading = Awaited<ReturnType<EngineDoor['readTrace']>>;
export type ReadTrace = Extract<Reading, { ok: true }>;
type Columns = ReadTrace['columns'];

/** Slower than this a step in distance gives no usable time [m/s] */
const CRAWL_MPS = 0.5;

/** Both columns that the scenario wants; the one that the file lacks follows from the other and the speed. */
export function traceOf(name: string, columns: Columns): NonNullable<Scenario['trace']> {
  const { speed_mps } = columns;
  const time_s =
    columns.time_s ??
    summed(speed_mps, (i, mean) => between(columns.distance_m, i) / Math.max(CRAWL_MPS, mean));
  const distance_m = columns.distance_m ?? summed(speed_mps, (i, mean) => between(columns.time_s, i) * mean);
  return {
    name: name.slice(0, 400),
    time_s: Array.from(time_s),
    distance_m: Array.from(distance_m),
    speed_kmh: Array.from(speed_mps, kmh),
  };
}

/** Running sum from 0 of what each step adds, given its number and its mean speed. */
function summed(speed_mps: Float64Array, step: (i: number, mean_mps: number) => number): Float64Array {
  const sum = new Float64Array(speed_mps.length);
  for (let i = 1; i < sum.length; i++) {
    const mean_mps = ((speed_mps[i] ?? 0) + (speed_mps[i - 1] ?? 0)) / 2;
    sum[i] = (sum[i - 1] ?? 0) + step(i, mean_mps);
  }
  return sum;
}

const between = (column: Float64Array | undefined, i: number): number =>
  (column?.[i] ?? 0) - (column?.[i - 1] ?? 0);
