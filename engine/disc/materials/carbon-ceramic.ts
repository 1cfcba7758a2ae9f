/** Carbon-ceramic: carbon fibres in silicon carbide, infiltrated with liquid silicon. */
import { kelvin } from '../../units.ts';
import { heatCapacityGraphite, heatCapacitySiliconCarbide } from './constituents.ts';
import { tableRange, type Material } from './material.ts';

/** Carbon by mass; the rest counts as silicon carbide, a tenth of free silicon with it. From memory, 0.3 to 0.5 [-] */
const CARBON = 0.4;

/**
 * Specific heat capacity of carbon-ceramic, by the rule of mixtures.
 *
 *     c = w c_graphite + (1 − w) c_SiC,   w = 0.4
 *
 * @remarks
 * For 200 to 1700 K. A tenth more carbon adds 1 % at 20 °C and 4 % at 800 °C.
 * Source: rule of mixtures (Kopp), with Butland & Maddison (1973) and Snead et al. (2007).
 *
 * @param temperature_K - temperature [K]
 * @returns specific heat capacity [J/(kg K)]
 *
 * @example
 * heatCapacityCarbonCeramic(kelvin(20)) // => 671.9
 * heatCapacityCarbonCeramic(kelvin(800)) // => 1445.6
 */
export function heatCapacityCarbonCeramic(temperature_K: number): number {
  return (
    CARBON * heatCapacityGraphite(temperature_K) + (1 - CARBON) * heatCapacitySiliconCarbide(temperature_K)
  );
}

const ENTRIES_C = [-60, 20, 100, 200, 300, 400, 500, 600, 700, 800, 1000, 1200, 1400];
const temperature_K = ENTRIES_C.map(kelvin);

/** Through the thickness; along the fibres it is 30 to 60. From memory, 20 to 40 [W/(m K)] */
const CONDUCTIVITY = [40, 40, 39, 37, 35, 33, 31.5, 30, 28.5, 27, 25, 23, 22];

/** Density from memory, 2250 to 2450. */
export const carbonCeramic: Material = {
  density_kgpm3: 2350,
  temperature_K,
  heatCapacity: temperature_K.map(heatCapacityCarbonCeramic),
  conductivity: CONDUCTIVITY,
  range: tableRange(
    'carbon-ceramic',
    [kelvin(-60), kelvin(1400)],
    'Butland & Maddison 1973, Snead et al. 2007; k from memory',
  ),
};
