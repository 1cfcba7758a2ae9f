/** Convection of what stands around the disc: the bell and the caliper. */
import { blendConvection } from './nusselt-face.ts';
import type { CornerSpec } from './corner-spec.ts';
import { turningFace } from './face-convection.ts';
import { nusseltPlate } from './nusselt-plate.ts';
import { filmOf, type Film, type OutsideAir } from './outside-air.ts';

/** Speed past the caliper over that past the faces: it sits in the wheel's lee. From memory, 0.4 to 0.7 [-] */
const CALIPER_SHELTER = 0.5;
/** Transition of a boundary layer in air as turbulent as that behind a wheel. From memory, 3e4 to 1e5 [-] */
const TURBULENT_AIR_RE = 5e4;

/** Side of a square plate of half the caliper's surface [m] */
const caliperLength = ({ caliper }: CornerSpec): number => Math.sqrt(caliper.area_m2 / 2);

/** A plate along which air flows [W/(m² K)] */
const plate = ({ k, Pr, viscosity }: Film, speed_mps: number, length_m: number): number =>
  (nusseltPlate((speed_mps * length_m) / viscosity, Pr, TURBULENT_AIR_RE) * k) / length_m;

/** Reynolds numbers at which the laws of a corner's outside are used, to compare with their ranges. */
export interface OutsideReynolds {
  /** `rotatingDiscRange` */
  rotation: number;
  /** `passingAirRange`, of the quicker face */
  passing: number;
  /** `turningCylinderRange` */
  edge: number;
  /** `plateRange` */
  bell: number;
  caliper: number;
}

/** The Reynolds numbers of a corner at a speed, its walls at one temperature. */
export function outsideReynolds(spec: CornerSpec, at: OutsideAir, wall_K: number): OutsideReynolds {
  const { disc } = spec;
  const { viscosity, wheel_radps, inner_mps, outer_mps } = filmOf(spec, at, wall_K);
  const mean_mps = (inner_mps + outer_mps) / 2;
  const quicker_mps = Math.max(outer_mps, Math.hypot(inner_mps, at.wash_mps));
  return {
    rotation: (wheel_radps * (disc.outer_m / 2) ** 2) / viscosity,
    passing: (quicker_mps * disc.outer_m) / viscosity,
    edge: (wheel_radps * disc.outer_m ** 2) / (2 * viscosity),
    bell: (mean_mps * disc.inner_m) / viscosity,
    caliper: (CALIPER_SHELTER * mean_mps * caliperLength(spec)) / viscosity,
  };
}

/**
 * Convection of the bell.
 *
 *     G = A (h_plate³ + h_rotation³ + h_still³)^(1/3),  length and diameter: the ring's inner diameter
 *
 * @remarks
 * A hat as wide as the ring's inside, half of it in the air of either face. Source: plate of Incropera & DeWitt, turbulent
 * from 5e4 on (from memory), and the rotating disc of Cobb & Saunders (1956, from memory).
 *
 * @param spec - the corner
 * @param at - what it meets
 * @param wall_K - temperature of the bell [K]
 * @param film - over it, where it is known already
 * @returns conductance [W/K]
 *
 * @example
 * bellConductance({ disc: { outer_m: 0.38, inner_m: 0.256 }, bell: { area_m2: 0.06 }, wheel: { crossflow: 0, still: 4, openShare: 0.35, loadedRadius_m: 0.345 } }, { speed_mps: 0, wash_mps: 0, air_K: 300, pressure_Pa: 101325 }, 400) // => 0.24
 */
export function bellConductance(
  spec: CornerSpec,
  at: OutsideAir,
  wall_K: number,
  film = filmOf(spec, at, wall_K),
): number {
  const { disc, bell, wheel } = spec;
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
 * A plate of half its surface on either side, in the wheel's lee; the share w of it is washed by the duct's leak. A square
 * bar of 100 mm across the air (Hilpert, from memory) comes within a fifth of it. Source: plate of Incropera & DeWitt, turbulent from 5e4 on; the lee is from memory.
 *
 * @param spec - the corner
 * @param at - what it meets
 * @param wall_K - temperature of the caliper [K]
 * @param film - over it, where it is known already
 * @returns conductance [W/K]
 *
 * @example
 * caliperConductance({ disc: { outer_m: 0.38 }, caliper: { area_m2: 0.11, ductWash: 0 }, wheel: { crossflow: 0, still: 4, openShare: 0.35, loadedRadius_m: 0.345 } }, { speed_mps: 0, wash_mps: 0, air_K: 300, pressure_Pa: 101325 }, 400) // => 0.44
 */
export function caliperConductance(
  spec: CornerSpec,
  at: OutsideAir,
  wall_K: number,
  film = filmOf(spec, at, wall_K),
): number {
  const { caliper, wheel } = spec;
  const lee_mps = (CALIPER_SHELTER * (film.inner_mps + film.outer_mps)) / 2;
  const over = (speed_mps: number): number =>
    blendConvection(plate(film, speed_mps, caliperLength(spec)), wheel.still);
  const dry = over(lee_mps);
  const washed = over(Math.sqrt(lee_mps ** 2 + at.wash_mps ** 2));
  return caliper.area_m2 * (dry + caliper.ductWash * (washed - dry));
}
