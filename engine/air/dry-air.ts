/** Properties of dry air that depend on temperature, and its density. */

import { GAS_CONSTANT_AIR } from './standard-atmosphere.ts';

/** First temperature and spacing of the heat capacity table [K] */
const TABLE_FROM_K = 250;
const TABLE_STEP_K = 50;
/** Heat capacity of air at 250, 300 … 1000 K. Source: Incropera and others, Table A.4 [J/kgK] */
const HEAT_CAPACITY = [
  1006, 1007, 1009, 1014, 1021, 1030, 1040, 1051, 1063, 1075, 1087, 1099, 1110, 1121, 1131, 1141,
] as const;

/**
 * Dynamic viscosity of dry air.
 *
 *     μ = 1.458e-6 T^1.5 / (T + 110.4)
 *
 * @remarks
 * Does not depend on pressure. Against Incropera's Table A.4: +0.2 % at 250 K, −0.7 % at 400 K, −2.0 % at 800 K.
 * Source: U.S. Standard Atmosphere, 1976, equation 51 (Sutherland's form).
 *
 * @param T - air temperature, 100 to 900 [K]
 * @returns dynamic viscosity [Pa·s]
 *
 * @example
 * viscosityAir(288.15) // => 1.78938e-5
 */
export function viscosityAir(T: number): number {
  return (1.458e-6 * T ** 1.5) / (T + 110.4);
}

/**
 * Thermal conductivity of dry air.
 *
 *     k = 2.64638e-3 T^1.5 / (T + 245.4·10^(−12/T))
 *
 * @remarks
 * Does not depend on pressure. Within 0.8 % of Incropera's Table A.4 from 250 to 800 K.
 * Source: U.S. Standard Atmosphere, 1976, equation 53.
 *
 * @param T - air temperature, 200 to 900 [K]
 * @returns thermal conductivity [W/mK]
 *
 * @example
 * conductivityAir(288.15) // => 0.0253259
 */
export function conductivityAir(T: number): number {
  return (2.64638e-3 * T ** 1.5) / (T + 245.4 * 10 ** (-12 / T));
}

/**
 * Heat capacity at constant pressure of dry air, linear between the lines of a table.
 *
 * @remarks
 * The table runs from 250 to 1000 K; outside, the nearest end holds. Does not depend on pressure.
 * Source: Incropera, DeWitt, Bergman and Lavine, Introduction to Heat Transfer, Table A.4.
 *
 * @param T - air temperature, 250 to 1000 [K]
 * @returns heat capacity [J/kgK]
 *
 * @example
 * heatCapacityAir(425) // => 1017.5
 */
export function heatCapacityAir(T: number): number {
  const last = HEAT_CAPACITY.length - 1;
  const place = Math.min(last, Math.max(0, (T - TABLE_FROM_K) / TABLE_STEP_K));
  const line = Math.min(last - 1, Math.floor(place));
  const below = HEAT_CAPACITY[line] ?? NaN;
  const above = HEAT_CAPACITY[line + 1] ?? NaN;
  return below + (above - below) * (place - line);
}

/**
 * Prandtl number of dry air.
 *
 *     Pr = μ cp / k
 *
 * @remarks
 * Within 2.7 % of Incropera's Table A.4 from 250 to 800 K, where it is 0.68 to 0.72.
 * Source: the definition, with the three properties of this file.
 *
 * @param T - air temperature, 250 to 900 [K]
 * @returns Prandtl number [-]
 *
 * @example
 * prandtlAir(300) // => 0.708
 */
export function prandtlAir(T: number): number {
  return (viscosityAir(T) * heatCapacityAir(T)) / conductivityAir(T);
}

/**
 * Density of dry air as an ideal gas.
 *
 *     ρ = p / (287.053 T)
 *
 * @remarks
 * Incropera's Table A.4 prints densities 1.2 to 1.5 % lower than this at 101 325 Pa.
 * Source: U.S. Standard Atmosphere, 1976, equation 42.
 *
 * @param T - air temperature [K]
 * @param pressure_Pa - absolute pressure [Pa]
 * @returns density [kg/m³]
 *
 * @example
 * densityDryAir(288.15, 101325) // => 1.2250
 */
export function densityDryAir(T: number, pressure_Pa: number): number {
  return pressure_Pa / (GAS_CONSTANT_AIR * T);
}
