/** A titanium shim between backing plate and pistons. */
import { SHIM_CONDUCTIVITY } from './materials/caliper-side.ts';

/** Share of the plates that pistons and abutments touch: rims of hollow pistons. From memory, 0.06 to 0.15 [-] */
const TOUCHED = 0.1;
/** One more dry joint of metal on metal in air, pressed by the line. From memory, 2000 to 10 000 [W/(m² K)] */
const JOINT = 5000;

/**
 * Conductance from both backing plates into the caliper, with a shim in the way.
 *
 *     G = 1 / (1/G₀ + d/(k A) + 1/(h A)),   A = 0.1 of both plates
 *
 * @remarks
 * The shim's own resistance and one more joint, over what the pistons touch, in series with the path without it.
 * Source: thermal resistances in series, Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, 3.1; k, h and the
 * touched area from memory.
 *
 * @param piston_WpK - conductance without shim [W/K]
 * @param shim_m - thickness of the shim, 0: none [m]
 * @param plates_m2 - area of both plates [m²]
 * @returns conductance [W/K]
 *
 * @example
 * conductanceShimmed(3.2, 0, 0.0184) // => 3.2
 * conductanceShimmed(3.2, 1e-3, 0.0184) // => 2.0765
 */
export function conductanceShimmed(piston_WpK: number, shim_m: number, plates_m2: number): number {
  if (shim_m === 0 || piston_WpK === 0) return piston_WpK;
  const touched_m2 = TOUCHED * plates_m2;
  return 1 / (1 / piston_WpK + shim_m / (SHIM_CONDUCTIVITY * touched_m2) + 1 / (JOINT * touched_m2));
}
