/** A perforated blank over the mouth: holes so small that the plate is thick beside them. */

import { conductanceBlankedMouth } from './loss-mouth.ts';

/** √½: what a sharp entrance from still air loses is its square, as in the law of the sharp edge [-] */
const ENTRANCE = 0.707;

/**
 * Share of the loss between contraction and widening that a thick edge keeps; falls as the jet fills the hole again.
 *
 *     τ = (2.4 − l) 10^−(0.25 + 0.535 l⁸/(0.05 + l⁸))
 *
 * @remarks
 * 1.35 for a thin plate, where a sharp edge has √2, and about 0 from l = 2.4 on.
 * Source: Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 4-12, as transcribed in the
 * Modelica library FluidDissipation.
 *
 * @param depth - plate thickness over hydraulic diameter of the hole, above 0.015 [-]
 * @returns coefficient [-]
 *
 * @example
 * thickEdge(1) // => 0.24356
 */
export function thickEdge(depth: number): number {
  const eighth = depth ** 8;
  return Math.max(0, 2.4 - depth) * 10 ** -(0.25 + (0.535 * eighth) / (0.05 + eighth));
}

/**
 * Loss coefficient of thick-edged openings between two ducts, without the friction in them.
 *
 *     ζ = [0.5 (1 − f₁)^0.75 + τ (1 − f₁)^0.375 (1 − f) + (1 − f)²] / f²
 *
 * @remarks
 * On the dynamic pressure behind, in the whole section. Re in the openings above 1000. Friction adds λ l/f², 1 % at most
 * for the plates meant here.
 * Source: Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 4-12, as transcribed in the
 * Modelica library FluidDissipation.
 *
 * @param open - open area over the section ahead and over the section behind, each 0 to 1 [-]
 * @param depth - plate thickness over hydraulic diameter of the openings [-]
 * @returns loss coefficient [-]
 *
 * @example
 * lossThickEdged({ ahead: 0.5, behind: 0.5 }, 1) // => 2.56483
 */
export function lossThickEdged({ ahead, behind }: { ahead: number; behind: number }, depth: number): number {
  const onOpening =
    0.5 * (1 - ahead) ** 0.75 + thickEdge(depth) * (1 - ahead) ** 0.375 * (1 - behind) + (1 - behind) ** 2;
  return onOpening / behind ** 2;
}

/**
 * Conductance of a mouth behind a perforated blank: one over the square root of its loss coefficient.
 *
 *     g = f / √(½ + τ (1 − f) + (1 − f)²)
 *
 * @remarks
 * The law of thick-edged openings with still air ahead, f₁ → 0. An open mouth is the sharp-edged law's, for then
 * nothing is fitted. 0 for a closed one. Between plates in ducts the general form was measured; over a mouth it was not.
 * Source: as for the loss of thick-edged openings.
 *
 * @param f - open fraction of the mouth's area, 0 to 1 [-]
 * @param depth - plate thickness over the holes' diameter [-]
 * @returns share of the mouth's area that a loss-free opening would need [-]
 *
 * @example
 * conductancePerforatedMouth(0.3, 0.1875) // => 0.219927
 */
export function conductancePerforatedMouth(f: number, depth: number): number {
  const closed = 1 - f;
  return f / Math.sqrt(ENTRANCE ** 2 + thickEdge(depth) * closed + closed ** 2);
}

/**
 * Conductance of a blanked mouth by what blanks it.
 *
 *     sharp edge: f / (1.707 − f);   perforated: f / √(½ + τ (1 − f) + (1 − f)²)
 *
 * @remarks
 * Source: as for each.
 *
 * @param f - open fraction of the mouth's area, 0 to 1 [-]
 * @param depth - plate thickness over the holes' diameter of a perforated blank; left out: a sharp edge [-]
 * @returns share of the mouth's area that a loss-free opening would need [-]
 *
 * @example
 * conductanceMouth(0.3) // => 0.213220
 */
export function conductanceMouth(f: number, depth?: number): number {
  return depth === undefined ? conductanceBlankedMouth(f) : conductancePerforatedMouth(f, depth);
}
