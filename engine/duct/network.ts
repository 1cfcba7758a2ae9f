/** The air of one corner, from the mouth to the wheel. */

import type { AirFlows, AirPathGeometry, AirPathState, VanePath } from './air-path.ts';
import { ductLossFreeArea } from './duct-resistance.ts';
import { solvePlenum, type Branch, type PlenumNode } from './plenum.ts';
import { riseSolidBody } from './pumping.ts';

/**
 * Flows through duct, vanes and leak of one corner at one speed.
 *
 *     mouth: η q;  vanes: Cp_exit q − ψ ½ρω²(Rₒ² − Rᵢ²);  leak: Cp_wheelhouse q      q = (q/q∞) ½ρV²
 *
 * @remarks
 * Pressures around a car in a wake all refer to the air it meets, so the wake's ratio scales ram and suction alike.
 * Where the mouth is shut, or there is no duct, the vanes draw through the leak. At rest every flow is 0. Left out:
 * buoyancy, the cooling air's own heating in the vanes, pressure steps from steering.
 * Source: the loss coefficients and pressures named in their files, joined by conservation of mass.
 *
 * @param geometry - the air path
 * @param state - opening, speed, wheel speed, densities and wake
 * @returns flows [kg/s] and gauge pressure in the plenum [Pa]
 *
 * @example
 * solveAirPath({ mouthArea_m2: 0, leakArea_m2: 0.001, leakLoss: 2.5, wheelhouseCp: -0.2, exitCp: -0.2,
 *   vanes: { flowArea_m2: 0.01, loss: 4, outerRadius_m: 0.19, innerRadius_m: 0.13, pumping: 0.5 } },
 *   { openFraction: 1, speed_mps: 50, wheel_radps: 150, density_kgpm3: 1.2, qRatio: 1 }).vane_kgps // => 0.01107
 */
export function solveAirPath(geometry: AirPathGeometry, state: AirPathState): AirFlows {
  return solvePlenum(plenumNode(geometry, state));
}

/** The pressures and openings around the plenum. */
function plenumNode(geometry: AirPathGeometry, state: AirPathState): PlenumNode {
  const { density_kgpm3, speed_mps, qRatio } = state;
  const q_Pa = qRatio * 0.5 * density_kgpm3 * speed_mps ** 2;
  const lossFree_m2 = ductLossFreeArea(geometry, state.openFraction);
  const leak = {
    far_Pa: geometry.wheelhouseCp * q_Pa,
    lossFree_m2: geometry.leakArea_m2 / Math.sqrt(geometry.leakLoss),
  };
  // A way that is shut takes the leak's pressure, so that it cannot widen the search or drive anything.
  const shut = { far_Pa: leak.far_Pa, lossFree_m2: 0 };
  return {
    duct: lossFree_m2 > 0 ? { far_Pa: geometry.recovery * q_Pa, lossFree_m2 } : shut,
    vanes: geometry.vanes ? vaneBranch(geometry.vanes, state, geometry.exitCp * q_Pa) : shut,
    leak,
    density_kgpm3,
    wheelhouseDensity_kgpm3: state.wheelhouseDensity_kgpm3 ?? density_kgpm3,
  };
}

function vaneBranch(vanes: VanePath, state: AirPathState, exit_Pa: number): Branch {
  const { outerRadius_m, innerRadius_m } = vanes;
  const { density_kgpm3, wheel_radps } = state;
  const rise_Pa = vanes.pumping * riseSolidBody({ density_kgpm3, wheel_radps, outerRadius_m, innerRadius_m });
  return { far_Pa: exit_Pa - rise_Pa, lossFree_m2: vanes.flowArea_m2 / Math.sqrt(vanes.loss) };
}
