/** A lap read from a logger's file, as the scenario keeps it. */
import type { TraceColumns } from '../circuit/trace.ts';
import { kmhFromMps } from '../units.ts';
import type { Scenario } from './schema.ts';

/** Slower than this a step in distance gives no usable time [m/s] */
const CRAWL_MPS = 0.5;

/** Both columns that the scenario wants; the one that the file lacks follows from the other and the speed. */
export function tracePart(name: string, columns: TraceColumns): NonNullable<Scenario['trace']> {
  const { speed_mps, time_s, distance_m, slope, height_m } = columns;
  const fromStart = (column: Float64Array): number[] => Array.from(column, (value) => value - column[0]!);
  const summed = (step: (i: number, mean_mps: number) => number): number[] => {
    let sum = 0;
    return Array.from(speed_mps, (v, i) => (sum += i === 0 ? 0 : step(i, (v + speed_mps[i - 1]!) / 2)));
  };
  const timeStep = (i: number, mean_mps: number): number =>
    (distance_m![i]! - distance_m![i - 1]!) / Math.max(CRAWL_MPS, mean_mps);
  const distanceStep = (i: number, mean_mps: number): number => (time_s![i]! - time_s![i - 1]!) * mean_mps;
  return {
    name: name.slice(0, 400),
    time_s: time_s ? fromStart(time_s) : summed(timeStep),
    distance_m: distance_m ? fromStart(distance_m) : summed(distanceStep),
    speed_kmh: Array.from(speed_mps, kmhFromMps),
    ...(slope ? { slope_pct: Array.from(slope, (rise) => 100 * rise) } : {}),
    ...(height_m ? { height_m: Array.from(height_m) } : {}),
  };
}
