import { dragForce, rollingForce } from './longitudinal.ts';
import type { AirState, CarDynamics } from './types.ts';

/**
 * Top speed of a car on a level road: where drag and rolling resistance take all power at the wheels.
 *
 *     P η = (½ ρ CdA V² + f m g) V
 *
 * @remarks
 * Power is held over revs (a gear for every speed). Newton's method from above: the cubic is convex there,
 * so it falls on the root without crossing it.
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics, 1995, ch. 3 (from memory).
 *
 * @param car - power, efficiency, drag area, rolling resistance and mass count [-]
 * @param air - density, power and drag factors [-]
 * @returns speed [m/s]
 *
 * @example
 * topSpeed(
 *   { power_W: 373e3, efficiency: 0.9, dragArea_m2: 0.95, rolling: 0.015, mass_kg: 1250 },
 *   { density_kgpm3: 1.2, powerFactor: 1, dragFactor: 1 },
 * ) // => 82.5394
 */
export function topSpeed(
  car: Pick<CarDynamics, 'power_W' | 'efficiency' | 'dragArea_m2' | 'rolling' | 'mass_kg'>,
  air: AirState,
): number {
  const power_W = car.power_W * car.efficiency * air.powerFactor;
  const dragTerm = dragForce(air.density_kgpm3, car.dragArea_m2 * air.dragFactor, 1);
  const rolling_N = rollingForce(car.rolling, car.mass_kg);
  if (dragTerm === 0) return power_W / rolling_N;
  let V = Math.cbrt(power_W / dragTerm);
  for (let i = 0; i < 20; i++) {
    const step = (dragTerm * V ** 3 + rolling_N * V - power_W) / (3 * dragTerm * V * V + rolling_N);
    V -= step;
    if (Math.abs(step) < 1e-10 * V) break;
  }
  return V;
}

/**
 * Top speed that a drag area costs.
 *
 *     ΔV = V(CdA) − V(CdA + ΔCdA)
 *
 * @remarks
 * The exact difference of both roots; for small areas ΔV ≈ V ΔCdA/CdA / 3 where rolling resistance is small.
 * Source: the power balance of the top speed.
 *
 * @param car - power, efficiency, drag area, rolling resistance and mass count; without the added area [-]
 * @param air - density, power and drag factors [-]
 * @param added_m2 - drag area that is added [m²]
 * @returns loss of top speed, positive for an added area [m/s]
 *
 * @example
 * topSpeedLoss(
 *   { power_W: 373e3, efficiency: 0.9, dragArea_m2: 0.95, rolling: 0.015, mass_kg: 1250 },
 *   { density_kgpm3: 1.2, powerFactor: 1, dragFactor: 1 },
 *   0.0075,
 * ) // => 0.212724
 */
export function topSpeedLoss(car: Parameters<typeof topSpeed>[0], air: AirState, added_m2: number): number {
  return topSpeed(car, air) - topSpeed({ ...car, dragArea_m2: car.dragArea_m2 + added_m2 }, air);
}
