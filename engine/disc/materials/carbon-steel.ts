/** Plain carbon steel, of which backing plates are made; also the matrix of grey iron. */
import { celsius, kelvin } from '../../units.ts';
import { tableRange, type Material } from './material.ts';

/**
 * Specific heat capacity of carbon steel, with its peak where pearlite becomes austenite.
 *
 *     c = 425 + 0.773 θ − 1.69e-3 θ² + 2.22e-6 θ³    20 ≤ θ < 600
 *     c = 666 + 13002/(738 − θ)                       600 ≤ θ < 735
 *     c = 545 + 17820/(θ − 731)                       735 ≤ θ < 900
 *     c = 650                                         900 ≤ θ ≤ 1200,    θ in °C
 *
 * @remarks
 * Below 20 °C the cubic runs on: at −60 °C it gives 372, iron has 395 (from memory).
 * Source: EN 1993-1-2:2005, 3.4.1.2.
 *
 * @param temperature_K - temperature [K]
 * @returns specific heat capacity [J/(kg K)]
 *
 * @example
 * heatCapacityCarbonSteel(kelvin(20)) // => 439.80
 * heatCapacityCarbonSteel(kelvin(735)) // => 5000.0
 * heatCapacityCarbonSteel(kelvin(1000)) // => 650.0
 */
export function heatCapacityCarbonSteel(temperature_K: number): number {
  const θ = celsius(temperature_K);
  if (θ < 600) return 425 + 0.773 * θ - 1.69e-3 * θ ** 2 + 2.22e-6 * θ ** 3;
  if (θ < 735) return 666 + 13002 / (738 - θ);
  if (θ < 900) return 545 + 17820 / (θ - 731);
  return 650;
}

/**
 * Thermal conductivity of carbon steel.
 *
 *     k = 54 − 3.33e-2 θ   20 ≤ θ < 800,     k = 27.3   800 ≤ θ ≤ 1200,    θ in °C
 *
 * @remarks
 * Source: EN 1993-1-2:2005, 3.4.1.3.
 *
 * @param temperature_K - temperature [K]
 * @returns thermal conductivity [W/(m K)]
 *
 * @example
 * conductivityCarbonSteel(kelvin(20)) // => 53.334
 * conductivityCarbonSteel(kelvin(900)) // => 27.3
 */
export function conductivityCarbonSteel(temperature_K: number): number {
  const θ = celsius(temperature_K);
  return θ < 800 ? 54 - 3.33e-2 * θ : 27.3;
}

/** Dense where the peak is, whose sides are hyperbolae. [°C] */
const ENTRIES_C = [
  -60, 20, 100, 200, 300, 400, 500, 600, 650, 680, 700, 712, 720, 726, 730, 733, 735, 737, 740, 745, 752, 762,
  780, 810, 850, 900, 1200,
];
const temperature_K = ENTRIES_C.map(kelvin);

/** Density by EN 1993-1-2:2005, 3.2.2. */
export const carbonSteel: Material = {
  density_kgpm3: 7850,
  temperature_K,
  heatCapacity: temperature_K.map(heatCapacityCarbonSteel),
  conductivity: temperature_K.map(conductivityCarbonSteel),
  range: tableRange('the backing plate', [kelvin(-60), kelvin(1200)], 'EN 1993-1-2:2005, 3.4.1'),
};
