/**
 * Thermal effusivity: how much heat a body draws through its surface at a given rise of it.
 *
 *     ξ = √(k ρ c)
 *
 * @remarks
 * Take the properties at the mean temperature of the contact; for grey iron ξ moves by 4 % over 20-600 °C.
 * Source: Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, ch. II (from memory).
 *
 * @param conductivity_WpmK - thermal conductivity k [W/(m·K)]
 * @param density_kgpm3 - density ρ [kg/m³]
 * @param heat_JpkgK - specific heat c [J/(kg·K)]
 * @returns effusivity [J/(m²·K·√s)]
 *
 * @example
 * effusivity(50, 7200, 500) // => 13416.408
 * effusivity(1.5, 2500, 1000) // => 1936.492
 */
export function effusivity(conductivity_WpmK: number, density_kgpm3: number, heat_JpkgK: number): number {
  return Math.sqrt(conductivity_WpmK * density_kgpm3 * heat_JpkgK);
}

/**
 * Share of friction heat that goes into the disc, a ring running under short pads.
 *
 *     γ = ξ_d S_d / (ξ_d S_d + ξ_p S_p)
 *
 * @remarks
 * Semi-infinite bodies in perfect contact: right for single stops, falls short once the pads are soaked.
 * Published partition formulas differ by several percent: keep γ a parameter, 0.90-0.98.
 * Source: Talati & Jalalifar, Heat and Mass Transfer 45 (2009) 1047 (from memory); equal areas give the
 * form without areas of Limpert, Brake Design and Safety, ch. 3 (from memory).
 *
 * @param disc - effusivity [J/(m²·K·√s)] and swept area of both faces [m²]
 * @param pad - effusivity [J/(m²·K·√s)] and area of both pads [m²]
 * @returns share into the disc [-]
 *
 * @example
 * discShare({ effusivity: 13416.408, area_m2: 1 }, { effusivity: 1936.492, area_m2: 1 }) // => 0.873868
 * discShare({ effusivity: 13416.408, area_m2: 0.070 }, { effusivity: 1936.492, area_m2: 0.011 }) // => 0.977821
 */
export function discShare(
  disc: { effusivity: number; area_m2: number },
  pad: { effusivity: number; area_m2: number },
): number {
  const toDisc = disc.effusivity * disc.area_m2;
  return toDisc / (toDisc + pad.effusivity * pad.area_m2);
}
