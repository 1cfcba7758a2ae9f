/** Convection of a corner's outside: both faces of the disc, its edge, the bell and the caliper. */
import { conductivityAir, densityDryAir, prandtlAir, viscosityAir } from '../air/dry-air.ts';
import type { ValidRange } from '../valid-range.ts';
import type { CornerSpec } from './corner-spec.ts';
import { nusseltCylinder } from './nusselt-cylinder.ts';
import { blendConvection, nusseltPassingAir, nusseltRotatingDisc } from './nusselt-face.ts';
import { nusseltPlate } from './nusselt-plate.ts';
import { nusseltTurningCylinder } from './nusselt-rim.ts';
import { wheelRadius } from './wheelhouse.ts';

/** Open share of a wheel for which the scenario states the share of car speed that passes the faces [-] */
const STATED_OPEN = 0.35;
/** Least free share between disc and wheel, for a disc that all but fills it [-] */
const LEAST_FREE = 0.1;
/** Speed past the caliper over that past the faces: it sits in the wheel's lee. From memory, 0.4 to 0.7 [-] */
const CALIPER_SHELTER = 0.5;
/** Transition of a boundary layer in air as turbulent as that behind a wheel. From memory, 3e4 to 1e5 [-] */
const TURBULENT_AIR_RE = 5e4;

/** Still air around a hot disc, to compare with the scenario's `still`. */
export const stillRange: ValidRange = {
  law: 'convection of a standing disc',
  quantity: 'heat transfer coefficient',
  unit: 'W/(m² K)',
  low: 3,
  high: 5,
  source: 'Topouris et al., Strojniški vestnik 66 (2020) 15',
};

/** What a corner's outside meets. */
export interface OutsideAir {
  speed_mps: number;
  /** Speed of the duct's leak over what it washes [m/s] */
  wash_mps: number;
  air_K: number;
  pressure_Pa: number;
}

/**
 * Speed of the air past the outer face over that past the same face behind a wheel open by 35 %.
 *
 *     s = √((1/0.35² + 1/f²) / (1/o² + 1/f²)),  f = 1 − (R_disc/R_wheel)²
 *
 * @remarks
 * Two openings in series share one difference of pressure: the wheel's, o, and what the disc leaves free of it, f. Nothing
 * passes a closed wheel; an open one lets 1.2 to 1.5 times as much pass. Open shares of 0.1 to 0.8 are met.
 * Source: orifices in series, from continuity and Bernoulli's equation; that the free ring is the second one is from memory.
 *
 * @param openShare - open share of the wheel, 0 to 1 [-]
 * @param freeShare - free share between disc and wheel, above 0 [-]
 * @returns share, 1 for a wheel open by 35 % [-]
 *
 * @example
 * shareThroughWheel(1, 0.35) // => 1.33482
 */
export function shareThroughWheel(openShare: number, freeShare: number): number {
  const through = (open: number): number => (open * freeShare) / Math.hypot(open, freeShare);
  return through(openShare) / through(STATED_OPEN);
}

/** Share of the wheel's area that the disc leaves free [-] */
function freeShare(spec: CornerSpec): number {
  return Math.max(LEAST_FREE, 1 - (spec.disc.outer_m / 2 / wheelRadius(spec)) ** 2);
}

/** Properties of the film over a wall, and the speeds past it [m/s] */
function filmOf(spec: CornerSpec, at: OutsideAir, wall_K: number) {
  const film_K = (wall_K + at.air_K) / 2;
  const inner_mps = spec.wheel.crossflow * at.speed_mps;
  return {
    k: conductivityAir(film_K),
    Pr: prandtlAir(film_K),
    viscosity: viscosityAir(film_K) / densityDryAir(film_K, at.pressure_Pa),
    wheel_radps: at.speed_mps / spec.wheel.loadedRadius_m,
    inner_mps,
    outer_mps: inner_mps * shareThroughWheel(spec.wheel.openShare, freeShare(spec)),
  };
}
type Film = ReturnType<typeof filmOf>;

/** A face of radius R turning in still air [W/(m² K)] */
const turningFace = ({ k, viscosity, wheel_radps }: Film, radius_m: number): number =>
  (nusseltRotatingDisc((wheel_radps * radius_m ** 2) / viscosity) * k) / radius_m;

const plate = ({ k, Pr, viscosity }: Film, speed_mps: number, length_m: number): number =>
  (nusseltPlate((speed_mps * length_m) / viscosity, Pr, TURBULENT_AIR_RE) * k) / length_m;

/** Coefficients of both faces where nothing shadows them [W/(m² K)] */
export interface FaceCoefficients {
  outer: number;
  /** mean of the inner face, its part fed by the duct included */
  inner: number;
}

/** The outer face meets the air that leaves through the wheel, the inner one the air under the car and the duct's leak. */
export function faceCoefficients(spec: CornerSpec, at: OutsideAir, wall_K: number): FaceCoefficients {
  const { disc, wheel } = spec;
  const film = filmOf(spec, at, wall_K);
  const turning = blendConvection(turningFace(film, disc.outer_m / 2), wheel.still);
  const past = (air_mps: number): number =>
    blendConvection(
      turning,
      (nusseltPassingAir((air_mps * disc.outer_m) / film.viscosity) * film.k) / disc.outer_m,
    );
  const fed = past(Math.hypot(film.inner_mps, at.wash_mps));
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
 * @returns conductance [W/K]
 *
 * @example
 * faceConductance({ disc: { outer_m: 0.38, inner_m: 0.256, swept_m2: 0.124 }, wheel: { crossflow: 0.9, ductOnFace: 0, still: 4, covered: 0.15, openShare: 0.35, loadedRadius_m: 0.345 } }, { speed_mps: 0, wash_mps: 0, air_K: 300, pressure_Pa: 101325 }, 700) // => 0.4216
 */
export function faceConductance(spec: CornerSpec, at: OutsideAir, wall_K: number): number {
  const { outer, inner } = faceCoefficients(spec, at, wall_K);
  return (spec.disc.swept_m2 / 2) * (1 - spec.wheel.covered) * (outer + inner);
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
 * @returns conductance [W/K]
 *
 * @example
 * rimConductance({ disc: { outer_m: 0.38, cheek_m: 0.0092 }, wheel: { crossflow: 0, still: 4, covered: 0, openShare: 0.35, loadedRadius_m: 0.345 } }, { speed_mps: 0, wash_mps: 0, air_K: 300, pressure_Pa: 101325 }, 600) // => 0.087864
 */
export function rimConductance(spec: CornerSpec, at: OutsideAir, wall_K: number): number {
  const { disc, wheel } = spec;
  const film = filmOf(spec, at, wall_K);
  const perDiameter = film.k / disc.outer_m;
  const edge_mps = (film.wheel_radps * disc.outer_m) / 2;
  const across_mps = (film.inner_mps + film.outer_mps) / 2;
  const turning = perDiameter * nusseltTurningCylinder((edge_mps * disc.outer_m) / film.viscosity);
  const across = perDiameter * nusseltCylinder((across_mps * disc.outer_m) / film.viscosity, film.Pr);
  const area_m2 = 2 * Math.PI * disc.outer_m * disc.cheek_m * (1 - wheel.covered);
  return area_m2 * blendConvection(blendConvection(turning, across), wheel.still);
}

/**
 * Convection of the bell.
 *
 *     G = A (h_plate³ + h_rotation³ + h_still³)^(1/3),  length and diameter: the ring's inner diameter
 *
 * @remarks
 * A hat as wide as the ring's inside, half of it in the air of either face. Source: plate of Incropera & DeWitt, turbulent from 5e4 on
 * (from memory), and the rotating disc of Cobb & Saunders (1956, from memory).
 *
 * @param spec - the corner
 * @param at - what it meets
 * @param wall_K - temperature of the bell [K]
 * @returns conductance [W/K]
 *
 * @example
 * bellConductance({ disc: { outer_m: 0.38, inner_m: 0.256 }, bell: { area_m2: 0.06 }, wheel: { crossflow: 0, still: 4, openShare: 0.35, loadedRadius_m: 0.345 } }, { speed_mps: 0, wash_mps: 0, air_K: 300, pressure_Pa: 101325 }, 400) // => 0.24
 */
export function bellConductance(spec: CornerSpec, at: OutsideAir, wall_K: number): number {
  const { disc, bell, wheel } = spec;
  const film = filmOf(spec, at, wall_K);
  const passing = plate(film, (film.inner_mps + film.outer_mps) / 2, disc.inner_m);
  const turning = turningFace(film, disc.inner_m / 2);
  return bell.area_m2 * blendConvection(blendConvection(passing, turning), wheel.still);
}

/**
 * Convection of the caliper.
 *
 *     G = A ((1 − w) h(v_lee) + w h(√(v_lee² + v_leak²))),  h = (h_plate³ + h_still³)^(1/3)
 *
 * @remarks
 * A plate of half its surface on either side, in the wheel's lee; the share w of it is washed by the duct's leak. Source: plate of
 * Incropera & DeWitt, turbulent from 5e4 on; the lee is from memory.
 *
 * @param spec - the corner
 * @param at - what it meets
 * @param wall_K - temperature of the caliper [K]
 * @returns conductance [W/K]
 *
 * @example
 * caliperConductance({ disc: { outer_m: 0.38 }, caliper: { area_m2: 0.11, ductWash: 0 }, wheel: { crossflow: 0, still: 4, openShare: 0.35, loadedRadius_m: 0.345 } }, { speed_mps: 0, wash_mps: 0, air_K: 300, pressure_Pa: 101325 }, 400) // => 0.44
 */
export function caliperConductance(spec: CornerSpec, at: OutsideAir, wall_K: number): number {
  const { caliper, wheel } = spec;
  const film = filmOf(spec, at, wall_K);
  const length_m = Math.sqrt(caliper.area_m2 / 2);
  const lee_mps = (CALIPER_SHELTER * (film.inner_mps + film.outer_mps)) / 2;
  const over = (speed_mps: number): number => blendConvection(plate(film, speed_mps, length_m), wheel.still);
  const dry = over(lee_mps);
  const washed = over(Math.hypot(lee_mps, at.wash_mps));
  return caliper.area_m2 * (dry + caliper.ductWash * (washed - dry));
}
