/** The forces along a car's path, and what its tyres allow. Forces act backwards when positive. */
import { shareBesideWake } from '../air/tow.ts';
import { GRAVITY_MPS2 } from '../units.ts';
import type { AirState } from './types.ts';

/**
 * Share of full revs that a driver keeps while slowing in gear.
 * Common practice, no source: downshifts hold the engine in the upper third of its range.
 */
const SLOWING_REVS = 0.8;

/**
 * Speed below which the lowest gear lets the revs fall [m/s]. Common practice, no source: valid for road
 * racing gear sets whose first gear reaches 60-90 km/h.
 */
const FIRST_GEAR_MPS = 15;

/**
 * Aerodynamic drag of a car moving through still air.
 *
 *     F = ½ ρ CdA V²
 *
 * @remarks
 * No wind along the road. CdA is held over speed and attitude.
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics, 1995, ch. 3 (from memory).
 *
 * @param density_kgpm3 - air density [kg/m³]
 * @param dragArea_m2 - drag coefficient times frontal area [m²]
 * @param speed_mps - speed [m/s]
 * @returns force against the motion [N]
 *
 * @example
 * dragForce(1.2, 0.95, 70) // => 2793
 */
export function dragForce(density_kgpm3: number, dragArea_m2: number, speed_mps: number): number {
  return 0.5 * density_kgpm3 * dragArea_m2 * speed_mps * speed_mps;
}

/**
 * Drag over drag in clear air at a speed: the tow holds only while the car is in line.
 *
 *     factor = f + (1 − f) · share beside the wake
 *
 * Source: `shareBesideWake`; the tow itself is `towDragShare`.
 *
 * @param air - drag factor in line, and the speed above which the car pulls out [-]
 * @param speed_mps - speed [m/s]
 * @returns factor on the drag [-]
 *
 * @example
 * dragFactorAt({ dragFactor: 0.9, pullOut_mps: 50 }, 40) // => 0.9
 * dragFactorAt({ dragFactor: 0.9, pullOut_mps: 50 }, 60) // => 1
 */
export function dragFactorAt(air: Pick<AirState, 'dragFactor' | 'pullOut_mps'>, speed_mps: number): number {
  const { dragFactor, pullOut_mps } = air;
  if (pullOut_mps === undefined) return dragFactor;
  return dragFactor + (1 - dragFactor) * shareBesideWake(speed_mps, pullOut_mps);
}

/**
 * Rolling resistance of a car on a sealed road.
 *
 *     F = f m g
 *
 * @remarks
 * f is held over speed and temperature, and downforce adds nothing: 20-50 N of some 200 N are left out.
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics, 1995, ch. 2 (from memory).
 *
 * @param rolling - rolling resistance over weight [-]
 * @param mass_kg - mass of the car [kg]
 * @returns force against the motion [N]
 *
 * @example
 * rollingForce(0.015, 1300) // => 191.230
 */
export function rollingForce(rolling: number, mass_kg: number): number {
  return rolling * mass_kg * GRAVITY_MPS2;
}

/**
 * Pull of the weight along a sloping road.
 *
 *     F = m g i / √(1 + i²)
 *
 * @remarks
 * The slope's effect on the load across the road is under 0.5 % up to a slope of 0.1 and is left out.
 * Source: resolution of the weight along the road; Milliken & Milliken, 1995, ch. 2 (from memory).
 *
 * @param mass_kg - mass of the car [kg]
 * @param slope - rise over horizontal run, above 0 uphill [-]
 * @returns force against the motion, below 0 downhill [N]
 *
 * @example
 * slopeForce(1300, 0.05) // => 636.637
 */
export function slopeForce(mass_kg: number, slope: number): number {
  return (mass_kg * GRAVITY_MPS2 * slope) / Math.sqrt(1 + slope * slope);
}

/**
 * Braking force of a closed-throttle engine on its driven wheels, in the gear a driver would choose.
 *
 *     F = 0.8 P / max(V, 15 m/s)
 *
 * @remarks
 * Braking torque of an engine on a closed throttle is nearly constant over revs, so its power follows revs.
 * Downshifts keep the revs near 0.8 of full whatever the speed; below first gear's speed they fall with it,
 * the torque at the wheels stays, and so does the force.
 * Source: common practice, no source; the full-revs power is a property of the car.
 *
 * @param engineBraking_W - braking power at full revs, at the wheels [W]
 * @param speed_mps - speed [m/s]
 * @returns force against the motion [N]
 *
 * @example
 * engineBrakingForce(40e3, 40) // => 800
 * engineBrakingForce(40e3, 10) // => 2133.33
 */
export function engineBrakingForce(engineBraking_W: number, speed_mps: number): number {
  return (SLOWING_REVS * engineBraking_W) / Math.max(speed_mps, FIRST_GEAR_MPS);
}

/**
 * Acceleration that a car's tyres can give per unit of friction, with downforce.
 *
 *     N/m = g + ρ ClA V² / 2m
 *
 * @remarks
 * Level road, no vertical curvature, friction that does not fall with load: all four tyres act as one.
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics, 1995, ch. 15 (from memory).
 *
 * @param liftTerm_pm - ρ ClA / 2m [1/m]
 * @param speed_mps - speed [m/s]
 * @returns load on the tyres per mass [m/s²]
 *
 * @example
 * loadPerMass(0.96e-3, 50) // => 12.2067
 */
export function loadPerMass(liftTerm_pm: number, speed_mps: number): number {
  return GRAVITY_MPS2 + liftTerm_pm * speed_mps * speed_mps;
}

/**
 * Share of the longitudinal grip that is left while cornering.
 *
 *     aₓ/aₓ,max = √(1 − (a_y/a_y,max)²)
 *
 * @remarks
 * The friction ellipse. Nothing is left at or beyond the lateral limit.
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics, 1995, ch. 2 and 9 (from memory).
 *
 * @param lateralUse - lateral acceleration over its limit [-]
 * @returns longitudinal acceleration over its limit [-]
 *
 * @example
 * frictionEllipse(0.6) // => 0.8
 */
export function frictionEllipse(lateralUse: number): number {
  return lateralUse >= 1 ? 0 : Math.sqrt(1 - lateralUse * lateralUse);
}

/**
 * Square of the highest speed round a corner, with downforce.
 *
 *     V² = μ g / (|κ| − μ ρ ClA / 2m)
 *
 * @remarks
 * Steady state, flat corner. Unlimited (Infinity) where downforce grows faster than the need for grip.
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics, 1995, ch. 15 (from memory); balance of
 * m V² κ against μ (m g + ½ ρ ClA V²).
 *
 * @param curvature_pm - curvature of the path, either sign [1/m]
 * @param friction - friction used across the path [-]
 * @param liftTerm_pm - ρ ClA / 2m [1/m]
 * @returns speed squared [m²/s²]
 *
 * @example
 * Math.sqrt(cornerSpeedSquared(1 / 50, 1.4, 0)) // => 26.2005
 * Math.sqrt(cornerSpeedSquared(1 / 100, 1.5, 0.96e-3)) // => 41.4543
 */
export function cornerSpeedSquared(curvature_pm: number, friction: number, liftTerm_pm: number): number {
  const need = Math.abs(curvature_pm) - friction * liftTerm_pm;
  return need <= 0 ? Infinity : (friction * GRAVITY_MPS2) / need;
}
