/** Sudden changes of section, between the mouth and the hoses and into the plenum. */

/** Loss of a jet that ends in a large still space: all of its dynamic pressure. Source: Borda-Carnot, area ratio 0 [-] */
export const LOSS_EXIT = 1;

/**
 * Loss coefficient of a sudden expansion.
 *
 *     ζ = (1 − A₁/A₂)²
 *
 * @remarks
 * Uniform turbulent flow, Re above 3300. The momentum balance behind it is exact for a uniform profile.
 * Source: Borda-Carnot, in Idelchik, Handbook of Hydraulic Resistance, diagram 4-1.
 *
 * @param areaRatio - small over large area, 0 to 1 [-]
 * @returns loss coefficient on the dynamic pressure in the small section [-]
 *
 * @example
 * lossExpansion(0.5) // => 0.25
 */
export function lossExpansion(areaRatio: number): number {
  return (1 - areaRatio) ** 2;
}

/**
 * Loss coefficient of a sudden contraction with a sharp edge.
 *
 *     ζ = 0.5 (1 − A₂/A₁)^0.75
 *
 * @remarks
 * Re above 10 000. Another author's form (Rennels) gives up to 19 % more; a rounded edge costs far less.
 * Source: Idelchik, Handbook of Hydraulic Resistance, diagram 4-9.
 *
 * @param areaRatio - small over large area, 0 to 1 [-]
 * @returns loss coefficient on the dynamic pressure in the small section [-]
 *
 * @example
 * lossContraction(0.5) // => 0.29730
 */
export function lossContraction(areaRatio: number): number {
  return 0.5 * (1 - areaRatio) ** 0.75;
}
