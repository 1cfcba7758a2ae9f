/** The standard atmosphere's lowest layer: temperature, pressure and density of still air at an altitude. */

import { GRAVITY_MPS2 } from '../units.ts';

/** Effective earth radius of the standard [m] */
const EARTH_RADIUS_M = 6_356_766;
/** Sea-level temperature of the standard [K] */
const SEA_LEVEL_K = 288.15;
/** Sea-level pressure of the standard [Pa] */
const SEA_LEVEL_PA = 101_325;
/** Temperature lapse up to 11 km geopotential [K/m] */
const LAPSE_KPM = 0.0065;
/** Specific gas constant of dry air, 8.31432 over 0.0289644. Source: U.S. Standard Atmosphere, 1976 [J/kgK] */
export const GAS_CONSTANT_AIR = 8.31432 / 0.0289644;
/** g₀ / (R·lapse) = 5.25588 [-] */
const PRESSURE_EXPONENT = GRAVITY_MPS2 / (GAS_CONSTANT_AIR * LAPSE_KPM);

export interface StillAir {
  readonly air_K: number;
  readonly pressure_Pa: number;
  readonly density_kgpm3: number;
}

/**
 * Geopotential altitude of a height above sea level.
 *
 *     H = r₀·Z / (r₀ + Z)
 *
 * @remarks
 * r₀ = 6 356 766 m. At 3000 m the two differ by 1.4 m.
 * Source: U.S. Standard Atmosphere, 1976 (NOAA, NASA, USAF), equation 18; the same in ISO 2533.
 *
 * @param altitude_m - geometric altitude above sea level [m]
 * @returns geopotential altitude [m]
 *
 * @example
 * altitudeGeopotential(3000) // => 2998.585
 */
export function altitudeGeopotential(altitude_m: number): number {
  return (EARTH_RADIUS_M * altitude_m) / (EARTH_RADIUS_M + altitude_m);
}

/**
 * Temperature of the standard atmosphere at a geometric altitude.
 *
 *     T = 288.15 − 0.0065 H
 *
 * @remarks
 * Valid from −5 to 11 km; above that it goes on falling where the standard stays at 216.65 K.
 * Source: U.S. Standard Atmosphere, 1976, equation 23; ISO 2533.
 *
 * @param altitude_m - geometric altitude above sea level [m]
 * @returns temperature [K]
 *
 * @example
 * temperatureStandard(1000) // => 281.651
 */
export function temperatureStandard(altitude_m: number): number {
  return SEA_LEVEL_K - LAPSE_KPM * altitudeGeopotential(altitude_m);
}

/**
 * Pressure of the standard atmosphere at a geometric altitude.
 *
 *     p = 101325 (T/288.15)^5.25588
 *
 * @remarks
 * Valid from −5 to 11 km. The day's barometer moves it by up to ±4 %, which the standard does not know.
 * Source: U.S. Standard Atmosphere, 1976, equation 33a; ISO 2533.
 *
 * @param altitude_m - geometric altitude above sea level [m]
 * @returns static pressure [Pa]
 *
 * @example
 * pressureStandard(3000) // => 70121.2
 */
export function pressureStandard(altitude_m: number): number {
  return SEA_LEVEL_PA * (temperatureStandard(altitude_m) / SEA_LEVEL_K) ** PRESSURE_EXPONENT;
}

/**
 * Temperature, pressure and density of the standard atmosphere at a geometric altitude.
 *
 *     ρ = p / (287.053 T)
 *
 * @remarks
 * Valid from −5 to 11 km. On a given day take the pressure from here and the temperature from the forecast.
 * Source: U.S. Standard Atmosphere, 1976, equation 42; ISO 2533.
 *
 * @param altitude_m - geometric altitude above sea level [m]
 * @returns temperature [K], pressure [Pa] and density [kg/m³]
 *
 * @example
 * standardAtmosphere(1000).density_kgpm3 // => 1.11166
 */
export function standardAtmosphere(altitude_m: number): StillAir {
  const air_K = temperatureStandard(altitude_m);
  const pressure_Pa = pressureStandard(altitude_m);
  return { air_K, pressure_Pa, density_kgpm3: pressure_Pa / (GAS_CONSTANT_AIR * air_K) };
}
