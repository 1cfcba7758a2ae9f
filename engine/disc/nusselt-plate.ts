/** Convection of a plate along which air flows. */
import type { ValidRange } from '../valid-range.ts';

/** Reynolds number at which the boundary layer of a smooth plate in calm air turns turbulent. Source: Incropera & DeWitt, section 6.3 [-] */
const TRANSITION_RE = 5e5;

export const plateRange: ValidRange = {
  law: 'convection of bell and caliper',
  quantity: 'Reynolds number along the surface',
  unit: '',
  low: 1e3,
  high: 1e8,
  source: 'Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, section 7.2',
};

/**
 * Mean Nusselt number of a flat plate, laminar from its edge and turbulent behind the transition.
 *
 *     Re ≤ Re_c:  Nu = 0.664 √Re Pr^(1/3)
 *     Re > Re_c:  Nu = (0.037 Re^0.8 − A) Pr^(1/3),  A = 0.037 Re_c^0.8 − 0.664 √Re_c  (871 for 5e5)
 *
 * @remarks
 * Properties at film temperature, one wall temperature, 0.6 < Pr < 60, Re up to 1e8; continuous at the transition. In air as turbulent
 * as that behind a wheel the transition comes at some 5e4. Source: Incropera & DeWitt, Fundamentals of Heat and Mass Transfer,
 * section 7.2 (Pohlhausen; Schlichting's friction by Chilton and Colburn's analogy).
 *
 * @param Re - Reynolds number on the plate's length [-]
 * @param Pr - Prandtl number [-]
 * @param transition - Reynolds number of the transition [-]
 * @returns mean Nusselt number h L/k [-]
 *
 * @example
 * nusseltPlate(1e5, 0.7) // => 186.438
 * nusseltPlate(1e6, 0.7) // => 1299.2
 */
export function nusseltPlate(Re: number, Pr: number, transition = TRANSITION_RE): number {
  const laminar = 0.664 * Math.sqrt(Math.min(Re, transition));
  const turbulent = Re > transition ? 0.037 * (Re ** 0.8 - transition ** 0.8) : 0;
  return (laminar + turbulent) * Math.cbrt(Pr);
}
