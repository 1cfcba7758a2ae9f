/** Flows of one corner over a grid of speeds: what a run interpolates in. */

import type { AirPathConditions, AirPathGeometry } from './air-path.ts';
import { solveAirPath } from './network.ts';

export interface AirPathMapConditions extends AirPathConditions {
  /** Loaded radius of the rolling wheel. */
  readonly wheelRadius_m: number;
}

export interface AirPathMap {
  readonly speed_mps: Float64Array;
  readonly duct_kgps: Float64Array;
  readonly vane_kgps: Float64Array;
  /** Positive out of the plenum. */
  readonly leak_kgps: Float64Array;
  readonly plenum_Pa: Float64Array;
}

/** Speed at which the one solution is taken; any above 0 gives the same map. */
const REFERENCE_MPS = 50;

/**
 * Flows through duct, vanes and leak of one corner on a grid of speeds, with the wheel rolling.
 *
 *     ṁ(V) = ṁ(V₀) V/V₀;  p(V) = p(V₀) (V/V₀)²
 *
 * @remarks
 * One solution serves the whole grid: ram, suction and pumping all grow with V², and the loss coefficients do not
 * depend on speed. So a linear interpolation between grid speeds is exact for the flows.
 * Source: similarity of the equations of one corner at one speed.
 *
 * @param geometry - the air path
 * @param speeds_mps - grid of speeds, 0 or more [m/s]
 * @param conditions - opening, densities, wake and wheel radius
 * @returns flows [kg/s] and plenum pressure [Pa] at each speed
 */
export function airPathMap(
  geometry: AirPathGeometry,
  speeds_mps: ArrayLike<number>,
  conditions: AirPathMapConditions,
): AirPathMap {
  const wheel_radps = REFERENCE_MPS / conditions.wheelRadius_m;
  const at = solveAirPath(geometry, { ...conditions, speed_mps: REFERENCE_MPS, wheel_radps });
  const speed_mps = Float64Array.from(speeds_mps);
  const ratio = speed_mps.map((v) => v / REFERENCE_MPS);
  return {
    speed_mps,
    duct_kgps: ratio.map((r) => r * at.duct_kgps),
    vane_kgps: ratio.map((r) => r * at.vane_kgps),
    leak_kgps: ratio.map((r) => r * at.leak_kgps),
    plenum_Pa: ratio.map((r) => r * r * at.plenum_Pa),
  };
}
