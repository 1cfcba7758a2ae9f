/** Two invented cars, their driver and a warm day, as the tests drive them. All figures are invented. */
import long from '../../scenarios/circuits/long.json' with { type: 'json' };
import slow from '../../scenarios/circuits/slow.json' with { type: 'json' };
import sorrelby from '../../scenarios/circuits/sorrelby.json' with { type: 'json' };
import type { AirState, CarDynamics, Driver } from '../../engine/car/types.ts';
import type { Circuit } from '../../engine/circuit/circuit.ts';
import { layoutCircuit, type Layout } from '../../engine/circuit/layout.ts';
import type { SpeedProfile } from '../../engine/circuit/speed-profile.ts';

export const circuits = { sorrelby, long, slow } as unknown as Record<'sorrelby' | 'long' | 'slow', Circuit>;

/** Half way round the first push lap, fuel included. */
export const heavyCar: CarDynamics = {
  mass_kg: 1372.5,
  rotationalFactor: 1.05,
  rolling: 0.015,
  weightFront: 0.48,
  cgHeight_m: 0.46,
  wheelbase_m: 2.65,
  drivenAxle: 'rear',
  power_W: 335e3,
  efficiency: 0.9,
  dragArea_m2: 1.05,
  downforceArea_m2: 2.2,
  grip: 1.38,
  loadedRadius_m: 0.345,
  slip: 0.06,
  engineBraking_W: 40e3,
};

export const lightCar: CarDynamics = {
  mass_kg: 1039,
  rotationalFactor: 1.06,
  rolling: 0.015,
  weightFront: 0.53,
  cgHeight_m: 0.5,
  wheelbase_m: 2.45,
  drivenAxle: 'rear',
  power_W: 130e3,
  efficiency: 0.9,
  dragArea_m2: 0.68,
  downforceArea_m2: 0.15,
  grip: 1.15,
  loadedRadius_m: 0.295,
  slip: 0.05,
  engineBraking_W: 18e3,
};

const shares = { corneringShare: 0.9, brakingShare: 0.74, tractionShare: 0.85 };
export const heavyDriver: Driver = { ...shares, coast_s: 0.2, buildUp_s: 0.2 };
export const lightDriver: Driver = { ...shares, coast_s: 0.3, buildUp_s: 0.25 };

/** Uses all the grip and changes pedals in no time: what closed forms assume. */
export const perfectDriver: Driver = {
  corneringShare: 1,
  brakingShare: 1,
  tractionShare: 1,
  coast_s: 0,
  buildUp_s: 0,
};

/** 26 °C at 200 m. */
export const warmDay: AirState = { density_kgpm3: 1.1522, powerFactor: 0.9406, dragFactor: 1 };

export const straight = (length_m: number, slope_pct = 0): Layout =>
  layoutCircuit({ id: '', name: '', purpose: '', segments: [{ length_m, radius_m: null, slope_pct }] });

/** Distance and time from one speed down to another on full brakes that begin within a step. */
export function brakingFrom(profile: SpeedProfile, from_mps: number): { distance_m: number; time_s: number } {
  const { distance_m, time_s, speed_mps, accel_mps2 } = profile;
  const first = speed_mps.findIndex((v) => v < from_mps * (1 - 1e-9));
  const slower = speed_mps[first]!;
  const a = -accel_mps2[first]!;
  const end = speed_mps.length - 1;
  return {
    distance_m: distance_m[end]! - distance_m[first]! + (from_mps ** 2 - slower ** 2) / (2 * a),
    time_s: time_s[end]! - time_s[first]! + (from_mps - slower) / a,
  };
}

/** A small repeatable generator of uniform numbers in [0, 1). */
export function uniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Gaussian noise of unit deviation from a uniform generator (Box and Muller, 1958). */
export const gaussian = (next: () => number) => (): number =>
  Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());

/** A driven lap as a logger would record it. */
export function logged(
  profile: SpeedProfile,
  { rate_Hz, noise_mps, seed }: { rate_Hz: number; noise_mps: number; seed: number },
): { time_s: Float64Array; speed_mps: Float64Array } {
  const noise = gaussian(uniform(seed));
  const { time_s, speed_mps } = profile;
  let k = 0;
  const samples = Float64Array.from(
    { length: Math.floor(time_s.at(-1)! * rate_Hz) + 1 },
    (_, i) => i / rate_Hz,
  );
  const speeds = samples.map((t) => {
    while (k < time_s.length - 2 && time_s[k + 1]! < t) k++;
    const share = (t - time_s[k]!) / (time_s[k + 1]! - time_s[k]!);
    return Math.max(0, speed_mps[k]! + share * (speed_mps[k + 1]! - speed_mps[k]!) + noise_mps * noise());
  });
  return { time_s: samples, speed_mps: speeds };
}
