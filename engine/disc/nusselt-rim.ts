/** Convection of a disc's edge: a short cylinder that turns. */
import type { ValidRange } from '../valid-range.ts';

export const turningCylinderRange: ValidRange = {
  law: "convection of the disc's edge by its own rotation",
  quantity: 'Reynolds number of the edge',
  unit: '',
  low: 1.5e4,
  high: 4.33e5,
  source: 'Dropkin & Carmi, Trans. ASME 79 (1957) 741, from memory',
};

/**
 * Mean Nusselt number of a cylinder that rotates in still air.
 *
 *     Nu = 0.073 Re^0.7,  Re = ω D²/(2ν)
 *
 * @remarks
 * Air, Re 1.5e4 to 4.33e5. Others lie 11 % below to 18 % above it there: 0.10 Re^(2/3) (Anderson & Saunders 1953) and, for any
 * fluid, 0.133 Re^(2/3) Pr^(1/3) (Becker 1963). Source: Dropkin & Carmi, Trans. ASME 79 (1957) 741; all from memory.
 *
 * @param Re - Reynolds number of the edge's own speed on the diameter [-]
 * @returns mean Nusselt number h D/k [-]
 *
 * @example
 * nusseltTurningCylinder(1e5) // => 230.85
 */
export function nusseltTurningCylinder(Re: number): number {
  return 0.073 * Re ** 0.7;
}
