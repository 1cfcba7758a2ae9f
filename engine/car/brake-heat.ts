import { dragFactorAt, dragForce, engineBrakingForce, rollingForce, slopeForce } from './longitudinal.ts';
import { GRAVITY_MPS2 } from '../units.ts';
import type { AirState, CarDynamics } from './types.ts';

/**
 * Braking force below this share of the weight is none: the rounding of a driven profile while it coasts.
 * A foot resting on the pedal is ten times as much.
 */
const NOTHING = 1e-3;

/** A car's motion along the road on nodes, as `SpeedProfile` has it; acceleration by interval. */
export interface Motion {
  distance_m: Float64Array;
  time_s: Float64Array;
  speed_mps: Float64Array;
  accel_mps2: Float64Array;
  slope: Float64Array;
  /** where the brakes are known to be on (1) or off (0), by interval */
  brakes?: { pressed: Uint8Array };
}

export type BrakedCar = Pick<
  CarDynamics,
  'mass_kg' | 'rotationalFactor' | 'rolling' | 'dragArea_m2' | 'engineBraking_W' | 'slip'
>;
export type BrakedAir = Pick<AirState, 'density_kgpm3' | 'dragFactor' | 'pullOut_mps'>;

/** Heat of all four brakes together. Entry i of force and power is the mean over the interval i to i + 1. */
export interface BrakeHeat {
  /** braking force at the tyres that the brakes make [N] */
  force_N: Float64Array;
  /** friction power in the brakes [W] */
  power_W: Float64Array;
  /** heat since the start, at each node [J] */
  cumulative_J: Float64Array;
  total_J: number;
}

/**
 * Braking force that the brakes must make on one interval, after everything else has slowed the car.
 *
 *     F = max(0, −κ m a − ½ ρ CdA V² − f m g − m g i − F_engine)
 *
 * @remarks
 * V² is the mean of the squares at both ends: exact for a constant acceleration. The engine stays in gear.
 * Below the deceleration of a lifted throttle the result is 0, so noise of a measured trace on straights and
 * in corners is not heat: coasting from 60 m/s already is 1.5-2.2 m/s².
 * Source: Limpert, Brake Design and Safety, ch. 3 (from memory); force balance along the path.
 *
 * @param car - mass, rotational factor, rolling, drag area and engine braking count [-]
 * @param air - density and drag factor count [-]
 * @param motion - mean acceleration [m/s²], mean square of speed [m²/s²], slope [-]
 * @returns force of all four brakes [N]
 *
 * @example
 * brakeForce(
 *   { mass_kg: 1300, rotationalFactor: 1.05, rolling: 0.015, dragArea_m2: 1, engineBraking_W: 40e3 },
 *   { density_kgpm3: 1.2, dragFactor: 1 },
 *   { accel_mps2: -14, speedSquared: 2500, slope: 0 },
 * ) // => 16778.77
 */
export function brakeForce(
  car: Omit<BrakedCar, 'slip'>,
  air: BrakedAir,
  motion: { accel_mps2: number; speedSquared: number; slope: number },
): number {
  const speed_mps = Math.sqrt(motion.speedSquared);
  const resistance_N =
    dragForce(air.density_kgpm3, car.dragArea_m2 * dragFactorAt(air, speed_mps), speed_mps) +
    rollingForce(car.rolling, car.mass_kg) +
    slopeForce(car.mass_kg, motion.slope) +
    engineBrakingForce(car.engineBraking_W, speed_mps);
  const force_N = -car.rotationalFactor * car.mass_kg * motion.accel_mps2 - resistance_N;
  return force_N > NOTHING * car.mass_kg * GRAVITY_MPS2 ? force_N : 0;
}

/**
 * Brake heat of a motion: force times distance, less the share that braked tyres turn to heat by slipping.
 *
 *     P = F V (1 − s)
 *
 * Where brakes are known to be off, what slows the car more than the balance explains (a gear too low, a lift, wind) is
 * no brake heat.
 * Source: Limpert, Brake Design and Safety, ch. 3 (from memory).
 */
export function brakeHeat(motion: Motion, car: BrakedCar, air: BrakedAir): BrakeHeat {
  const { distance_m, time_s, speed_mps, accel_mps2, slope, brakes } = motion;
  const n = speed_mps.length - 1;
  const force_N = new Float64Array(n + 1);
  const power_W = new Float64Array(n + 1);
  const cumulative_J = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) {
    const speedSquared = (speed_mps[i]! ** 2 + speed_mps[i + 1]! ** 2) / 2;
    const here = { accel_mps2: accel_mps2[i]!, speedSquared, slope: (slope[i]! + slope[i + 1]!) / 2 };
    force_N[i] = brakes && !brakes.pressed[i] ? 0 : brakeForce(car, air, here);
    const heat_J = force_N[i]! * (distance_m[i + 1]! - distance_m[i]!) * (1 - car.slip);
    const dt_s = time_s[i + 1]! - time_s[i]!;
    power_W[i] = dt_s > 0 ? heat_J / dt_s : 0;
    cumulative_J[i + 1] = cumulative_J[i]! + heat_J;
  }
  return { force_N, power_W, cumulative_J, total_J: cumulative_J[n]! };
}

/**
 * Share of all brake heat that one axle makes, from the brake balance.
 *
 *     front: φ,  rear: 1 − φ
 *
 * @remarks
 * Balance of braking force, so of heat as long as no wheel locks.
 * Source: Limpert, Brake Design and Safety, ch. 5 (from memory).
 *
 * @param balanceFront - share of the braking force on the front axle [-]
 * @param axle - which axle [-]
 * @returns share of the four brakes' heat [-]
 *
 * @example
 * axleShare(0.64, 'rear') // => 0.36
 */
export function axleShare(balanceFront: number, axle: 'front' | 'rear'): number {
  return axle === 'front' ? balanceFront : 1 - balanceFront;
}
