/** How much of what one surface radiates meets another, and what two grey surfaces exchange. */

/** Stefan-Boltzmann constant. Source: CODATA 2018 [W/(m² K⁴)] */
export const STEFAN_BOLTZMANN = 5.670374419e-8;

/**
 * View factor from a disc to another on the same axis.
 *
 *     F₁₂ = ½ [S − √(S² − 4 (r₂/r₁)²)],  S = 1 + (1 + R₂²)/R₁²,  R = r/L
 *
 * @remarks
 * Exact for diffuse surfaces. Source: Howell, A Catalog of Radiation Heat Transfer Configuration Factors, C-41; Incropera &
 * DeWitt, Fundamentals of Heat and Mass Transfer, table 13.2.
 *
 * @param r1_m - radius of the disc that radiates [m]
 * @param r2_m - radius of the one that receives [m]
 * @param distance_m - between their planes, above 0 [m]
 * @returns share of what the first radiates that meets the second [-]
 *
 * @example
 * viewFactorDiscs(0.16, 0.16, 0.15) // => 0.404067
 */
export function viewFactorDiscs(r1_m: number, r2_m: number, distance_m: number): number {
  const S = 1 + (distance_m ** 2 + r2_m ** 2) / r1_m ** 2;
  const product = (r2_m / r1_m) ** 2;
  // the other root of the same quadratic: no difference of near numbers where the first disc is small
  return (2 * product) / (S + Math.sqrt(S ** 2 - 4 * product));
}

/**
 * View factor from a ring to a disc on the same axis.
 *
 *     F = (r_o² F_o − r_i² F_i) / (r_o² − r_i²)
 *
 * @remarks
 * Exact for diffuse surfaces: the whole disc radiates what its ring and its middle do.
 * Source: view-factor algebra, Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, section 13.1.
 *
 * @param ring - its inner and outer radius [m]
 * @param r2_m - radius of the disc that receives [m]
 * @param distance_m - between their planes, above 0 [m]
 * @returns share of what the ring radiates that meets the disc [-]
 *
 * @example
 * viewFactorRing({ inner_m: 0.1, outer_m: 0.16 }, 0.2, 0.1) // => 0.643593
 */
export function viewFactorRing(
  { inner_m, outer_m }: { inner_m: number; outer_m: number },
  r2_m: number,
  distance_m: number,
): number {
  const whole = outer_m ** 2 * viewFactorDiscs(outer_m, r2_m, distance_m);
  const middle = inner_m > 0 ? inner_m ** 2 * viewFactorDiscs(inner_m, r2_m, distance_m) : 0;
  return (whole - middle) / (outer_m ** 2 - inner_m ** 2);
}

/**
 * Emissivity at which a surface inside a grey enclosure loses heat, were the enclosure black.
 *
 *     ε = 1 / (1/ε₁ + (A₁/A₂)(1/ε₂ − 1))
 *
 * @remarks
 * Two diffuse grey surfaces that see all of each other: long concentric cylinders; with A₁/A₂ = 1 near parallel planes, with
 * A₁/A₂ = 0 a small body in a large room. Source: Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, table 13.3.
 *
 * @param inside - emissivity of the surface inside [-]
 * @param around - emissivity of the enclosure, 0 to 1 [-]
 * @param areaRatio - area inside over area around, 0 to 1 [-]
 * @returns effective emissivity on the inner area [-]
 *
 * @example
 * emissivityEnclosed(0.8, 0.5, 1) // => 0.44444
 */
export function emissivityEnclosed(inside: number, around: number, areaRatio: number): number {
  return 1 / (1 / inside + areaRatio * (1 / around - 1));
}

/**
 * Heat between two near parallel surfaces.
 *
 *     q = σ (T₁⁴ − T₂⁴) / (1/ε₁ + 1/ε₂ − 1)
 *
 * @remarks
 * The gap is narrow against both surfaces. Source: Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, table 13.3.
 *
 * @param hot - temperature [K] and emissivity of the first surface [-]
 * @param cold - the same of the second
 * @returns heat from the first to the second [W/m²]
 *
 * @example
 * exchangeGap({ T_K: 773.15, emissivity: 1 }, { T_K: 298.15, emissivity: 0.8 }) // => 15850.56
 */
export function exchangeGap(
  hot: { T_K: number; emissivity: number },
  cold: { T_K: number; emissivity: number },
): number {
  const both = emissivityEnclosed(hot.emissivity, cold.emissivity, 1);
  return STEFAN_BOLTZMANN * both * (hot.T_K ** 4 - cold.T_K ** 4);
}

/**
 * Emissivity of the mouth of a cavity.
 *
 *     ε_m = ε / (ε + a (1 − ε)),  a = mouth / walls
 *
 * @remarks
 * Diffuse grey walls of one temperature: the two-surface enclosure, the mouth being black.
 * Source: Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, table 13.3.
 *
 * @param wall - emissivity of its walls [-]
 * @param mouthShare - area of the mouth over that of the walls [-]
 * @returns effective emissivity of the mouth [-]
 *
 * @example
 * emissivityCavity(0.75, 0.2) // => 0.9375
 */
export function emissivityCavity(wall: number, mouthShare: number): number {
  return wall / (wall + mouthShare * (1 - wall));
}
