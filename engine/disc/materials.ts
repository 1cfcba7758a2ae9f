/** Heat capacity, conductivity and density of what a brake corner is made of, against temperature. */
import { kelvin } from '../units.ts';

export interface Material {
  /** Density at room temperature [kg/m³] */
  density_kgpm3: number;
  /** Temperatures of the table [K] */
  temperature_K: readonly number[];
  /** Specific heat capacity at those temperatures [J/(kg K)] */
  heatCapacity: readonly number[];
  /** Thermal conductivity at those temperatures [W/(m K)] */
  conductivity: readonly number[];
}

const constant = (density_kgpm3: number, heatCapacity: number, conductivity: number): Material => ({
  density_kgpm3,
  temperature_K: [200, 1500],
  heatCapacity: [heatCapacity, heatCapacity],
  conductivity: [conductivity, conductivity],
});

/**
 * Grey cast iron as used for brake discs; the peak near 750 °C is the change from pearlite to austenite.
 *
 * Values from memory. At 20 °C they give a diffusivity of 1.6e-5 m²/s, inside the 1.56 to 2.00e-5 m²/s measured on
 * commercial rotors by Hecht, Dinwiddie & Wang, J. Mater. Sci. 34 (1999) 4775.
 */
const greyIron: Material = {
  density_kgpm3: 7200,
  temperature_K: [-60, 20, 100, 200, 300, 400, 500, 600, 700, 735, 750, 765, 800, 900, 1000, 1250].map(
    kelvin,
  ),
  heatCapacity: [430, 460, 500, 530, 565, 605, 655, 715, 810, 1150, 1400, 1150, 700, 650, 660, 690],
  conductivity: [53, 53, 52, 50, 47, 44, 41, 38, 35, 34, 33.5, 33, 32, 31, 30, 30],
};

/** All materials by the names the scenario uses. All but iron are constants from memory, within 10 % of usual handbook values. */
export const materials = {
  'grey iron': greyIron,
  'carbon-ceramic': constant(2350, 1000, 30),
  aluminium: constant(2700, 920, 150),
  steel: constant(7850, 490, 45),
  pad: constant(2600, 950, 2.5),
  fluid: constant(1050, 2000, 0.15),
} as const satisfies Record<string, Material>;

export type MaterialName = keyof typeof materials;
