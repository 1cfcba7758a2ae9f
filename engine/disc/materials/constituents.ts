/** Heat capacities of the solids that grey iron and carbon-ceramic are mixed of. */

/** Thermochemical calorie a gram, the unit of the graphite fit [J/kg] */
const CALORIE_PER_GRAM = 4184;

/**
 * Specific heat capacity of graphite.
 *
 *     c = 0.54212 − 2.42667e-6 T − 90.2725/T − 43449.3/T² + 1.59309e7/T³ − 1.43688e9/T⁴   [cal/(g K)]
 *
 * @remarks
 * For 200 to 3500 K; carbon fibres and flakes are taken as graphite.
 * Source: Butland & Maddison, J. Nucl. Mater. 49 (1973) 45 (as public codes of reactor physics carry it).
 *
 * @param temperature_K - temperature [K]
 * @returns specific heat capacity [J/(kg K)]
 *
 * @example
 * heatCapacityGraphite(300) // => 712.76
 * heatCapacityGraphite(1000) // => 1759.2
 */
export function heatCapacityGraphite(temperature_K: number): number {
  const T = temperature_K;
  return (
    CALORIE_PER_GRAM *
    (0.54212 - 2.42667e-6 * T - 90.2725 / T - 43449.3 / T ** 2 + 1.59309e7 / T ** 3 - 1.43688e9 / T ** 4)
  );
}

/**
 * Specific heat capacity of silicon carbide.
 *
 *     c = 925.65 + 0.3772 T − 7.9259e-5 T² − 3.1946e7/T²
 *
 * @remarks
 * For 200 to 2400 K, within 7 % to 1000 K and 4 % above.
 * Source: Snead et al., J. Nucl. Mater. 371 (2007) 329 (as public codes of reactor physics carry it).
 *
 * @param temperature_K - temperature [K]
 * @returns specific heat capacity [J/(kg K)]
 *
 * @example
 * heatCapacitySiliconCarbide(300) // => 676.72
 * heatCapacitySiliconCarbide(1000) // => 1191.6
 */
export function heatCapacitySiliconCarbide(temperature_K: number): number {
  const T = temperature_K;
  return 925.65 + 0.3772 * T - 7.9259e-5 * T ** 2 - 3.1946e7 / T ** 2;
}
