/** The air that a corner's outside meets: how quickly it passes, and what it is like over a warm wall. */
import { densityDryAir } from '../air/dry-air.ts';
import type { ValidRange } from '../valid-range.ts';
import type { CornerSpec } from './corner-spec.ts';
import { filmAir } from './film-air.ts';
import { wheelRadius } from './wheelhouse.ts';

/** Open share of a wheel for which the scenario states the share of car speed that passes the faces [-] */
const STATED_OPEN = 0.35;
/** Least free share between disc and wheel, for a disc that all but fills it [-] */
const LEAST_FREE = 0.1;

/** Open shares of wheels for which the speed past the outer face follows from two openings. */
export const openWheelRange: ValidRange = {
  law: 'air past the outer face',
  quantity: 'open share of the wheel',
  unit: '',
  low: 0.1,
  high: 0.8,
  source: 'wheels as they are; from memory',
};

/** What a corner's outside meets. */
export interface OutsideAir {
  speed_mps: number;
  /** Speed of the duct's leak over what it washes [m/s] */
  wash_mps: number;
  air_K: number;
  pressure_Pa: number;
}

/** Properties of the film over a wall, and the speeds of the air around it. */
export interface Film {
  /** Conductivity [W/(m K)] */
  k: number;
  Pr: number;
  /** Kinematic viscosity [m²/s] */
  viscosity: number;
  wheel_radps: number;
  /** Air past the inner face and past the outer one [m/s] */
  inner_mps: number;
  outer_mps: number;
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
  const through = (open: number): number =>
    (open * freeShare) / Math.sqrt(open * open + freeShare * freeShare);
  return through(openShare) / through(STATED_OPEN);
}

/** Share of the wheel's area that the disc leaves free [-] */
function freeShare(spec: CornerSpec): number {
  return Math.max(LEAST_FREE, 1 - (spec.disc.outer_m / 2 / wheelRadius(spec)) ** 2);
}

/** The film over a wall of a corner; `air` where it is known already. */
export function filmOf(
  spec: CornerSpec,
  at: OutsideAir,
  wall_K: number,
  air = filmAir(wall_K, at.air_K),
): Film {
  const inner_mps = spec.wheel.crossflow * at.speed_mps;
  return {
    k: air.k,
    Pr: air.Pr,
    viscosity: air.dynamic / densityDryAir(air.film_K, at.pressure_Pa),
    wheel_radps: at.speed_mps / spec.wheel.loadedRadius_m,
    inner_mps,
    outer_mps: inner_mps * shareThroughWheel(spec.wheel.openShare, freeShare(spec)),
  };
}
