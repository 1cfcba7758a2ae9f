/** The measured lap of a scenario as a speed profile. */
import { cleanTrace } from '../circuit/clean-trace.ts';
import type { TraceColumns } from '../circuit/trace.ts';
import type { Scenario } from '../scenario/schema.ts';
import { GRAVITY_MPS2, mpsFromKmh, PA_PER_BAR } from '../units.ts';
import { memo } from './memo.ts';
import { traceNumber } from './trace-number.ts';

type Trace = NonNullable<Scenario['trace']>;

/** Made again only when the trace changed. */
export const measuredLap = memo(
  4,
  (trace: Trace) => [traceNumber(trace)],
  (trace) => cleanTrace(columnsOf(trace)),
);

function columnsOf(trace: Trace): TraceColumns {
  const si = (column: number[], factor: number): Float64Array =>
    Float64Array.from(column, (value) => value * factor);
  const { slope_pct, height_m, accel_g, brake_front_bar, brake_rear_bar } = trace;
  return {
    time_s: Float64Array.from(trace.time_s),
    speed_mps: Float64Array.from(trace.speed_kmh, mpsFromKmh),
    ...(slope_pct && { slope: si(slope_pct, 0.01) }),
    ...(height_m && { height_m: Float64Array.from(height_m) }),
    ...(accel_g && { accel_mps2: si(accel_g, GRAVITY_MPS2) }),
    ...(brake_front_bar && { brakeFront_Pa: si(brake_front_bar, PA_PER_BAR) }),
    ...(brake_rear_bar && { brakeRear_Pa: si(brake_rear_bar, PA_PER_BAR) }),
  };
}
