/** How the flow through an opening follows a pressure difference of either sign. */

/**
 * Square root that keeps the sign of its argument and crosses zero with a finite slope.
 *
 *     x / √(|x| + ε)
 *
 * @remarks
 * Times A √(2ρ/K) it is the mass flow through an opening under x Pa. Away from zero it is low by ε/2|x|, relative.
 * Source: definition of the loss coefficient, Δp = K ½ρV²; the rounding at zero is ours.
 *
 * @param x - pressure difference, either sign [Pa]
 * @param rounding - ε, 0 or more [Pa]
 * @returns signed square root [√Pa]
 *
 * @example
 * signedRoot(-900, 0) // => -30
 */
export function signedRoot(x: number, rounding: number): number {
  return x === 0 ? 0 : x / Math.sqrt(Math.abs(x) + rounding);
}
