/** Convection of a disc's outside: both faces and the edge. */
import type { ValidRange } from '../valid-range.ts';
import { faceArea, type CornerSpec } from './corner-spec.ts';
import { nusseltCylinder } from './nusselt-cylinder.ts';
import { blendConvection, nusseltPassingAir, nusseltRotatingDisc } from './nusselt-face.ts';
import { nusseltTurningCylinder } from './nusselt-rim.ts';
import { filmOf, type Film, type OutsideAir } from './outside-air.ts';

/** Still air around a hot disc, to compare with the scenario's `still`. */
export const stillRange: ValidRange = {
  law: 'convection of a standing disc',
  quantity: 'heat transfer coefficient',
  unit: 'W/(m² K)',
  low: 3,
  high: 5,
  source: 'Topouris et al., Strojniški vestnik 66 (2020) 15',
};

/**
 * Convection of a disc's face that turns in still air.
 *
 *     h = Nu k / R,  Re = ω R²/ν
 *
 * @remarks
 * Source: nusseltRotatingDisc, of which this is the coefficient.
 *
 * @param film - the air over it
 * @param radius_m - of the face [m]
 * @returns mean coefficient [W/(m² K)]
 *
 * @example
 * turningFace({ k: 0.03, viscosity: 2e-5, wheel_radps: 100 }, 0.1) // => 24.150
 */
export const turningFace = ({ k, viscosity, wheel_radps }: Film, radius_m: number): number =>
  (nusseltRotatingDisc((wheel_radps * radius_m ** 2) / viscosity) * k) / radius_m;

/** Coefficients of both faces where nothing shadows them [W/(m² K)] */
export interface FaceCoefficients {
  outer: number;
  /** mean of the inner face, its part fed by the duct included */
  inner: number;
}

/** The outer face meets the air that leaves through the wheel, the inner one the air under the car and the duct's leak. */
export function faceCoefficients(
  spec: CornerSpec,
  at: OutsideAir,
  wall_K: number,
  film = filmOf(spec, at, wall_K),
): FaceCoefficients {
  const { disc, wheel } = spec;
  const turning = blendConvection(turningFace(film, disc.outer_m / 2), wheel.still);
  const past = (air_mps: number): number =>
    blendConvection(
      turning,
      (nusseltPassingAir((air_mps * disc.outer_m) / film.viscosity) * film.k) / disc.outer_m,
    );
  const fed = past(Math.sqrt(film.inner_mps ** 2 + at.wash_mps ** 2));
  const open = past(film.inner_mps);
  return { outer: past(film.outer_mps), inner: open + wheel.ductOnFace * (fed - open) };
}

/**
 * Convection of both faces.
 *
 *     G = (A/2) (1 − covered) (h_outer + h_inner),  h = (h_rotation³ + h_still³ + h_passing³)^(1/3)
 *
 * @remarks
 * Pads and caliper shadow the share `covered`. The part of the inner face that the duct feeds meets √(v² + v_leak²).
 * Driving, rotation adds less than 2 % to the air that passes: below a critical ratio of the two it adds nothing in the simulations of
 * aus der Wiesche, Int. J. Thermal Sci. 46 (2007) 745. Source: laws of nusselt-face.ts; at rest `still`, measured 3 to 5 W/(m² K) by Topouris et al., Strojniški vestnik 66 (2020) 15.
 *
 * @param spec - the corner
 * @param at - what it meets
 * @param wall_K - temperature of the faces [K]
 * @param film - over it, where it is known already
 * @returns conductance [W/K]
 *
 * @example
 * faceConductance({ disc: { outer_m: 0.38, inner_m: 0.256 }, wheel: { crossflow: 0.9, ductOnFace: 0, still: 4, covered: 0.15, openShare: 0.35, loadedRadius_m: 0.345 } }, { speed_mps: 0, wash_mps: 0, air_K: 300, pressure_Pa: 101325 }, 700) // => 0.42119
 */
export function faceConductance(
  spec: CornerSpec,
  at: OutsideAir,
  wall_K: number,
  film = filmOf(spec, at, wall_K),
): number {
  const { outer, inner } = faceCoefficients(spec, at, wall_K, film);
  return faceArea(spec.disc) * (1 - spec.wheel.covered) * (outer + inner);
}

/**
 * Convection of the disc's edge: the rims of both cheeks, where the paint sits.
 *
 *     G = 2 π D t (1 − covered) (h_turning³ + h_across³ + h_still³)^(1/3)
 *
 * @remarks
 * A cylinder that turns, in the mean of the air past both faces; the caliper shadows as much of it as of the faces.
 * What leaves the vanes between the cheeks is not counted. Source: Dropkin & Carmi (1957), Churchill & Bernstein (1977).
 *
 * @param spec - the corner
 * @param at - what it meets
 * @param wall_K - temperature of the edge [K]
 * @param film - over it, where it is known already
 * @returns conductance [W/K]
 *
 * @example
 * rimConductance({ disc: { outer_m: 0.38, cheek_m: 0.0092 }, wheel: { crossflow: 0, still: 4, covered: 0, openShare: 0.35, loadedRadius_m: 0.345 } }, { speed_mps: 0, wash_mps: 0, air_K: 300, pressure_Pa: 101325 }, 600) // => 0.087864
 */
export function rimConductance(
  spec: CornerSpec,
  at: OutsideAir,
  wall_K: number,
  film = filmOf(spec, at, wall_K),
): number {
  const { disc, wheel } = spec;
  const perDiameter = film.k / disc.outer_m;
  const edge_mps = (film.wheel_radps * disc.outer_m) / 2;
  const across_mps = (film.inner_mps + film.outer_mps) / 2;
  const turning = perDiameter * nusseltTurningCylinder((edge_mps * disc.outer_m) / film.viscosity);
  const across = perDiameter * nusseltCylinder((across_mps * disc.outer_m) / film.viscosity, film.Pr);
  const area_m2 = 2 * Math.PI * disc.outer_m * disc.cheek_m * (1 - wheel.covered);
  return area_m2 * blendConvection(blendConvection(turning, across), wheel.still);
}
