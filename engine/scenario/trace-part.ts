/** A lap read from a logger's file, as the scenario keeps it. */
import type { TraceColumns } from '../circuit/trace.ts';
import { GRAVITY_MPS2, kmhFromMps, PA_PER_BAR } from '../units.ts';
import type { Scenario } from './schema.ts';

/** Slower than this a step in distance gives no usable time [m/s] */
const CRAWL_MPS = 0.5;

/** Both columns that the scenario wants; the one that the file lacks follows from the other and the speed. */
export function tracePart(name: string, columns: TraceColumns): NonNullable<Scenario['trace']> {
  const { speed_mps, time_s, distance_m } = columns;
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
    ...inUnits('slope_pct', columns.slope, 0.01),
    ...inUnits('height_m', columns.height_m, 1),
    ...inUnits('accel_g', columns.accel_mps2, GRAVITY_MPS2),
    ...inUnits('brake_front_bar', columns.brakeFront_Pa, PA_PER_BAR),
    ...inUnits('brake_rear_bar', columns.brakeRear_Pa, PA_PER_BAR),
  };
}

/** A column that the file may lack, in the scenario's unit, one of which is so large in SI. */
const inUnits = <K extends string>(
  key: K,
  column: Float64Array | undefined,
  size: number,
): Partial<Record<K, number[]>> =>
  column ? ({ [key]: Array.from(column, (value) => value / size) } as Record<K, number[]>) : {};
