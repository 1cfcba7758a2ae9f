/** Water vapour in the air and what it does to the density (at most about −2 %). */

/** Triple point of water: over ice below, over liquid water above [K] */
const TRIPLE_POINT_K = 273.16;
/** Ratio of the molar masses of water and dry air. Source: ASHRAE Handbook Fundamentals 2017, ch. 1 [-] */
const MOLAR_MASS_RATIO = 0.621945;
/** Gas constant of dry air in ASHRAE's rounding, kept with its other constants [J/kgK] */
const GAS_CONSTANT_ASHRAE = 287.042;

export interface MoistAir {
  readonly air_K: number;
  readonly pressure_Pa: number;
  /** Share of the saturation pressure, 0 to 1. */
  readonly relativeHumidity: number;
}

/**
 * Saturation pressure of water vapour over liquid water, and over ice below the triple point.
 *
 *     ln p = −5800.2206/T + 1.3914993 − 0.048640239 T + 4.1764768e-5 T² − 1.4452093e-8 T³ + 6.5459673 ln T
 *
 * @remarks
 * Valid from 173 to 473 K. The ice branch has its own constants, in the code.
 * Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equations 5 and 6 (Hyland and Wexler, 1983).
 *
 * @param T - temperature [K]
 * @returns saturation pressure [Pa]
 *
 * @example
 * pressureSaturation(298.15) // => 3169.22
 */
export function pressureSaturation(T: number): number {
  return Math.exp(T > TRIPLE_POINT_K ? lnSaturationOverWater(T) : lnSaturationOverIce(T));
}

function lnSaturationOverWater(T: number): number {
  const polynomial = 1.3914993 + T * (-0.048640239 + T * (4.1764768e-5 - T * 1.4452093e-8));
  return -5800.2206 / T + polynomial + 6.5459673 * Math.log(T);
}

function lnSaturationOverIce(T: number): number {
  const cubic = 6.2215701e-7 + T * (2.0747825e-9 - T * 9.484024e-13);
  return -5674.5359 / T + 6.3925247 + T * (-9.677843e-3 + T * cubic) + 4.1635019 * Math.log(T);
}

/**
 * Humidity ratio: mass of water vapour for each mass of dry air.
 *
 *     W = 0.621945 pᵥ / (p − pᵥ)
 *
 * @remarks
 * Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equation 20.
 *
 * @param vapour_Pa - partial pressure of the water vapour, below the whole pressure [Pa]
 * @param pressure_Pa - absolute pressure of the moist air [Pa]
 * @returns humidity ratio [kg/kg]
 *
 * @example
 * humidityRatio(2547.62, 101325) // => 0.016041
 */
export function humidityRatio(vapour_Pa: number, pressure_Pa: number): number {
  return (MOLAR_MASS_RATIO * vapour_Pa) / (pressure_Pa - vapour_Pa);
}

/**
 * Density of moist air from its temperature, pressure and relative humidity.
 *
 *     v = 287.042 T (1 + 1.607858 W) / p;  ρ = (1 + W) / v
 *
 * @remarks
 * At 35 °C and 80 % it is 1.7 % lighter than dry air, at 20 °C and 50 % 0.4 %.
 * Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equations 26 and 22.
 *
 * @param air - temperature [K], absolute pressure [Pa] and relative humidity, 0 to 1 [-]
 * @returns density of the mixture [kg/m³]
 *
 * @example
 * densityMoistAir({ air_K: 303.15, pressure_Pa: 101325, relativeHumidity: 0.6 }) // => 1.15336
 */
export function densityMoistAir(air: MoistAir): number {
  const { air_K, pressure_Pa, relativeHumidity } = air;
  const W = humidityRatio(relativeHumidity * pressureSaturation(air_K), pressure_Pa);
  const volume_m3pkg = (GAS_CONSTANT_ASHRAE * air_K * (1 + 1.607858 * W)) / pressure_Pa;
  return (1 + W) / volume_m3pkg;
}
