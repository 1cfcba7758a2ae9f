/** A driven lap as a logger with more channels than speed would write it. */
import type { BrakeHeat } from '../../engine/car/brake-heat.ts';
import { slopeForce } from '../../engine/car/longitudinal.ts';
import type { SpeedProfile } from '../../engine/circuit/speed-profile.ts';
import type { TraceColumns } from '../../engine/circuit/trace.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import { GRAVITY_MPS2, kmhFromMps } from '../../engine/units.ts';
import { gaussian, uniform } from './driving.ts';

export interface Logger {
  rate_Hz: number;
  speedNoise_mps: number;
  seed: number;
  /** an accelerometer's offset and noise [g], and its scale */
  accel?: { offset_g: number; noise_g: number; scale?: number };
  /** braking force of the lap and the noise of the pressure sensors [bar] */
  brakes?: { heat: BrakeHeat; noise_bar: number; rest_bar?: number };
}

/** Line pressure per braking force: 60 bar or so in a hard stop of the heavy car [Pa/N] */
const PA_PER_N = 300;

/** Speed, and what else the logger has: accelerations and pressures as they are at each row. */
export function loggedChannels(lap: SpeedProfile, logger: Logger): TraceColumns & { time_s: Float64Array } {
  const { rate_Hz, speedNoise_mps, seed, accel, brakes } = logger;
  const rows = Math.floor(lap.time_s.at(-1)! * rate_Hz) + 1;
  const time_s = Float64Array.from({ length: rows }, (_, i) => i / rate_Hz);
  const noise = gaussian(uniform(seed));
  const column = (of: (i: number, w: number) => number): Float64Array => {
    let i = 0;
    return time_s.map((t) => {
      while (i < lap.time_s.length - 2 && lap.time_s[i + 1]! <= t) i++;
      return of(i, (t - lap.time_s[i]!) / (lap.time_s[i + 1]! - lap.time_s[i]!));
    });
  };
  const between = (values: Float64Array, i: number, w: number): number =>
    values[i]! + w * (values[i + 1]! - values[i]!);
  const felt = (i: number): number => lap.accel_mps2[i]! + slopeForce(1, lap.slope[i]!);
  const speed_mps = column((i, w) => Math.max(0, between(lap.speed_mps, i, w) + speedNoise_mps * noise()));
  const pressure = (i: number): number =>
    1e5 * (brakes!.rest_bar ?? 0) + brakes!.heat.force_N[i]! * PA_PER_N + 1e5 * brakes!.noise_bar * noise();
  return {
    time_s,
    speed_mps,
    ...(accel && {
      accel_mps2: column(
        (i) => (accel.scale ?? 1) * felt(i) + GRAVITY_MPS2 * (accel.offset_g + accel.noise_g * noise()),
      ),
    }),
    ...(brakes && { brakeFront_Pa: column(pressure), brakeRear_Pa: column(pressure) }),
  };
}

export interface Ends {
  on_s: number;
  off_s: number;
  heat_J: number;
}

/** When each stop of some weight passes a fifth of its highest power, on the way up and on the way down. */
export function stopEnds({ time_s }: SpeedProfile, { power_W, cumulative_J }: BrakeHeat): Ends[] {
  const stops: { from: number; to: number }[] = [];
  for (let i = 0; i < time_s.length - 1; i++) {
    if (power_W[i]! < 2000) continue;
    const last = stops.at(-1);
    if (last && time_s[i]! - time_s[last.to]! < 0.25) last.to = i + 1;
    else stops.push({ from: i, to: i + 1 });
  }
  return stops
    .map(({ from, to }) => {
      const top = power_W.subarray(from, to).reduce((most, p) => Math.max(most, p), 0);
      let [first, last] = [from, to - 1];
      while (power_W[first]! < top / 5) first++;
      while (power_W[last]! < top / 5) last--;
      const heat_J = cumulative_J[to]! - cumulative_J[from]!;
      return { on_s: time_s[first]!, off_s: time_s[last + 1]!, heat_J };
    })
    .filter(({ heat_J }) => heat_J > 2e5);
}

/** Mean distance of each true stop's end to the nearest one read [s] */
export function endError(read: Ends[], exact: Ends[], end: 'on_s' | 'off_s'): number {
  const nearest = exact.map((stop) => Math.min(...read.map((one) => Math.abs(one[end] - stop[end]))));
  return nearest.reduce((sum, off) => sum + off, 0) / nearest.length;
}

/** The columns as a scenario keeps them, in the trade's units. */
export function traceOf(columns: TraceColumns & { time_s: Float64Array }): NonNullable<Scenario['trace']> {
  const { time_s, speed_mps, slope, height_m, accel_mps2, brakeFront_Pa, brakeRear_Pa } = columns;
  const inUnits = (column: Float64Array, unit: number): number[] =>
    Array.from(column, (value) => value / unit);
  const driven_m = speed_mps.map((v, i) => (i === 0 ? 0 : v * (time_s[i]! - time_s[i - 1]!)));
  let distance = 0;
  return {
    name: 'made for a test',
    time_s: Array.from(time_s),
    distance_m: Array.from(driven_m, (step) => (distance += step)),
    speed_kmh: Array.from(speed_mps, kmhFromMps),
    ...(slope && { slope_pct: inUnits(slope, 0.01) }),
    ...(height_m && { height_m: Array.from(height_m) }),
    ...(accel_mps2 && { accel_g: inUnits(accel_mps2, GRAVITY_MPS2) }),
    ...(brakeFront_Pa && { brake_front_bar: inUnits(brakeFront_Pa, 1e5) }),
    ...(brakeRear_Pa && { brake_rear_bar: inUnits(brakeRear_Pa, 1e5) }),
  };
}
