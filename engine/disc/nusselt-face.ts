/** Convection of a disc's faces: its own rotation, and the air that passes the wheel. */
import type { ValidRange } from '../valid-range.ts';

/** Rotational Reynolds number at which a disc's boundary layer turns turbulent; for a brake in disturbed air the low end. From memory: 2.0 to 2.4e5 in still air [-] */
const TRANSITION_RE = 1.2e5;

export const rotatingDiscRange: ValidRange = {
  law: 'convection of the faces by their own rotation',
  quantity: 'rotational Reynolds number of the disc',
  unit: '',
  low: 0,
  high: 6e5,
  source: 'Cobb & Saunders, Proc. R. Soc. A 236 (1956) 343, from memory',
};

export const passingAirRange: ValidRange = {
  law: 'convection of the faces by the air that passes',
  quantity: 'Reynolds number of that air on the diameter of the disc',
  unit: '',
  low: 1e4,
  high: 2e6,
  source: 'cars from walking pace to top speed; Limpert, SAE 751014 (1975), gives no bounds; from memory',
};

/**
 * Mean Nusselt number of a disc that rotates in still air, on its radius, laminar inside and turbulent outside.
 *
 *     x = min(1, √(Re_c/Re));  Nu = 0.36 √Re x² + 0.0195 Re^0.8 (2/2.6) (1 − x^2.6)
 *
 * @remarks
 * Properties at film temperature. Re_c 1.2e5: the air in a wheel is disturbed (from memory, 1e5 to 2.4e5).
 * Source: Cobb & Saunders, Proc. R. Soc. A 236 (1956) 343, 0.36 √Re laminar and 0.015 Re^0.8 turbulent (from memory).
 *
 * @param Re - rotational Reynolds number ω R²/ν [-]
 * @returns mean Nusselt number h R/k [-]
 *
 * @example
 * nusseltRotatingDisc(1e5) // => 113.84
 */
export function nusseltRotatingDisc(Re: number): number {
  if (Re <= TRANSITION_RE) return 0.36 * Math.sqrt(Re);
  const x = Math.sqrt(TRANSITION_RE / Re);
  return 0.36 * Math.sqrt(Re) * x ** 2 + 0.0195 * Re ** 0.8 * (2 / 2.6) * (1 - x ** 2.6);
}

/** Where both branches of `nusseltPassingAir` are equal [-] */
const CROSSING_RE = (0.7 / 0.04) ** 4;

/**
 * Mean Nusselt number of a disc in the air that passes it, on its diameter.
 *
 *     Nu = max(0.70 Re^0.55, 0.04 Re^0.8)
 *
 * @remarks
 * Properties at film temperature. The two branches cross at Re = 94,000, so that the larger one is continuous.
 * The book changes branch at 2.4e5 with a jump of 1.26; here there is none, and between the two the larger one is used, for the
 * air behind a wheel is disturbed. The kink left at the crossing is kept: rounding it by a power mean would add 9 % (exponent 8) to 26 %
 * (exponent 3) there, which no source supports, and the maps are sampled more coarsely than it could show.
 * Source: Limpert, Cooling Analysis of Disc Brake Rotors, SAE 751014 (1975), read in copies of its equations.
 *
 * @param Re - Reynolds number of the passing air on the disc's diameter [-]
 * @returns mean Nusselt number h D/k [-]
 *
 * @example
 * nusseltPassingAir(22020) // => 171.26
 */
export function nusseltPassingAir(Re: number): number {
  return Re < CROSSING_RE ? 0.7 * Re ** 0.55 : 0.04 * Re ** 0.8;
}

/**
 * Two convection coefficients acting together.
 *
 *     h = (h₁³ + h₂³)^(1/3)
 *
 * @remarks
 * The usual blend of independent mechanisms. Source: Churchill, AIChE Journal 23 (1977) 10 (exponent 3, from memory).
 *
 * @param h1 - one coefficient [W/(m² K)]
 * @param h2 - the other [W/(m² K)]
 * @returns blended coefficient [W/(m² K)]
 *
 * @example
 * blendConvection(3, 4) // => 4.4979
 */
export function blendConvection(h1: number, h2: number): number {
  return Math.cbrt(h1 * h1 * h1 + h2 * h2 * h2);
}
