/** The measured lap of a scenario as a speed profile. */
import type { BrakedCar } from '../car/brake-heat.ts';
import { PRESSURES, type ChannelName } from '../circuit/channel-check.ts';
import { cleanTrace, type CleanTrace } from '../circuit/clean-trace.ts';
import { shifted } from '../circuit/delay.ts';
import type { TraceColumns } from '../circuit/trace.ts';
import type { Scenario } from '../scenario/schema.ts';
import { GRAVITY_MPS2, mpsFromKmh, PA_PER_BAR } from '../units.ts';
import { heatAgreement } from './heat-agreement.ts';
import { memo } from './memo.ts';
import { traceNumber } from './trace-number.ts';

type Trace = NonNullable<Scenario['trace']>;
type TimedColumns = TraceColumns & { time_s: Float64Array };

/** Made again only when the trace changed, or what the car asks of its brakes. */
export const measuredLap = memo(
  4,
  ({ trace, car }: { trace: Trace; car: Scenario['car'] }) => [
    traceNumber(trace),
    ...(hasChannels(trace) ? Object.values(brakedCar(car)) : []),
  ],
  ({ trace, car }) => trustedLap(columnsOf(trace), brakedCar(car)),
);

const hasChannels = ({ accel_g, brake_front_bar, brake_rear_bar }: Trace): boolean =>
  [accel_g, brake_front_bar, brake_rear_bar].some((column) => column !== undefined);

/** The car with an empty tank: laps are compared with each other, and mass takes no side. */
const brakedCar = (car: Scenario['car']): BrakedCar => ({
  mass_kg: car.mass_kg,
  rotationalFactor: car.rotational_factor,
  rolling: car.rolling_coefficient,
  dragArea_m2: car.drag_area_m2,
  engineBraking_W: car.engine_braking_kW * 1000,
  slip: car.braking_slip,
});

/**
 * The lap made of the channels whose heat agrees with that of the speed. Each is tried on its own, so that a good line does not
 * hide a bad one.
 */
export function trustedLap(columns: TimedColumns, car: BrakedCar): CleanTrace {
  const lap = cleanTrace(columns);
  const taken = lap.findings.filter(({ leftOut }) => !leftOut).map(({ channel }) => channel);
  if (taken.length === 0) return lap;
  const { accel_mps2: _accel, brakeFront_Pa: _front, brakeRear_Pa: _rear, ...plain } = columns;
  const alone = cleanTrace(plain);
  const inTime = Object.fromEntries(
    lap.findings.map(({ channel, late_s }) => [channel, shifted(columns.time_s, columns[channel]!, late_s)]),
  );
  const only = (channels: readonly ChannelName[]): CleanTrace =>
    cleanTrace(
      { ...plain, ...Object.fromEntries(channels.map((channel) => [channel, inTime[channel]!])) },
      { isVetted: true },
    );
  const trusted = (channels: readonly ChannelName[], made = only(channels)): boolean =>
    heatAgreement(made, alone, car, made.used.pressure ? 'pressure' : 'accel').agrees;
  const pressures = PRESSURES.filter((line) => taken.includes(line) && trusted([line]));
  const lines = pressures.length < 2 || trusted(pressures) ? pressures : [];
  const accel = taken.filter((channel) => channel === 'accel_mps2');
  const felt = trusted(accel) ? accel : [];
  const kept = new Set<ChannelName>([...lines, ...felt]);
  const findings = lap.findings.map((one) =>
    taken.includes(one.channel) && !kept.has(one.channel) ? { ...one, leftOut: 'heat' as const } : one,
  );
  return { ...(kept.size === taken.length ? lap : only([...kept])), findings };
}

function columnsOf(trace: Trace): TimedColumns {
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
