/** The mouth of the duct and what blanks it with a sharp edge: tape, a plate with an edge, a hole or a few slots. */

/** 1 + 0.707: the loss of a sharp orifice into a duct from a very large space, as f → 0 [-] */
const MOUTH_LIMIT = 1.707;

/**
 * Loss coefficient of a blanked duct mouth, from still air into the duct.
 *
 *     ζ = (1.707 − f)² / f²
 *
 * @remarks
 * Referred to the dynamic pressure in the full mouth. Already holds the entrance: add no inlet loss.
 * f → 1 gives 0.50, the sharp flush entrance. Derived from the general form, not printed as it stands here. It counts
 * the open area, not its form or place: a jet from a long slot contracts to 0.611 (Kirchhoff), from a round hole to
 * about the same, and a handbook gives one law for both. So an edge, a hole and slots in a plate much thinner than
 * they are wide are one; an edge that leaves the air along a wall contracts on one side only, which is not told apart.
 * Source: general orifice form of Idelchik, Handbook of Hydraulic Resistance, with the upstream area → ∞.
 *
 * @param f - open fraction of the mouth's area, above 0 and at most 1 [-]
 * @returns loss coefficient [-]
 *
 * @example
 * lossBlankedMouth(0.5) // => 5.8274
 */
export function lossBlankedMouth(f: number): number {
  return ((MOUTH_LIMIT - f) / f) ** 2;
}

/**
 * Conductance of a blanked duct mouth: one over the square root of its loss coefficient.
 *
 *     g = 1/√ζ = f / (1.707 − f)
 *
 * @remarks
 * The form to compute with: 0 for a closed mouth, where the loss coefficient has no value.
 * Source: as for the loss coefficient.
 *
 * @param f - open fraction of the mouth's area, 0 to 1 [-]
 * @returns share of the mouth's area that a loss-free opening would need [-]
 *
 * @example
 * conductanceBlankedMouth(0.5) // => 0.41425
 */
export function conductanceBlankedMouth(f: number): number {
  return f / (MOUTH_LIMIT - f);
}
