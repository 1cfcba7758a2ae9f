/** What an infrared sensor shows of a hot surface, and what the surface was when it showed that. */

/** Second radiation constant h c/k. Source: CODATA 2018 [m K] */
const C2_MK = 1.438776877e-2;

/** Wavelengths a sensor takes in; 8 to 14 µm for the usual one. */
export interface Band {
  low_m: number;
  high_m: number;
}

/** How a sensor is set, and what it sees in the surface besides the surface itself. */
export interface Sensor {
  band: Band;
  /** Emissivity set on the sensor [-] */
  set: number;
  /** Temperature of what is mirrored in the surface [K] */
  reflected_K: number;
}

/** Coldest and hottest that is looked for [K] */
const COLDEST_K = 150;
const HOTTEST_K = 3000;

/**
 * Share of a black body's radiation at wavelengths below a limit.
 *
 *     F = 15/π⁴ ∫ₓ^∞ u³/(eᵘ − 1) du,  x = C₂/(λ T)
 *
 * @remarks
 * Series in e^(−nx) above x = 1, in powers of x below; better than 1e-10 of the whole. For λT up to about 0.1 m K.
 * Source: Planck's law; series as in Chang & Rhee, Int. Comm. Heat Mass Transfer 11 (1984) 451.
 *
 * @param lambdaT - wavelength times temperature [m K]
 * @returns share of σT⁴ [-]
 *
 * @example
 * blackbodyShare(2.898e-3) // => 0.250106
 */
export function blackbodyShare(lambdaT: number): number {
  const x = C2_MK / lambdaT;
  return (15 / Math.PI ** 4) * (x > 1 ? tail(x) : Math.PI ** 4 / 15 - head(x));
}

/** ∫ from x to infinity, summed until a term adds nothing. */
function tail(x: number): number {
  let sum = 0;
  for (let n = 1; n * x < 40 + x; n++) {
    sum += (Math.exp(-n * x) / n) * (x ** 3 + (3 * x ** 2) / n + (6 * x) / n ** 2 + 6 / n ** 3);
  }
  return sum;
}

/** ∫ from 0 to x by Bernoulli's numbers. */
function head(x: number): number {
  const s = x * x;
  const even = 1 / 60 - s * (1 / 5040 - s * (1 / 272160 - s * (1 / 13305600 - s / 622702080)));
  return x ** 3 * (1 / 3 - x / 8 + s * even);
}

/**
 * Radiation of a black body within a band, in units of Stefan and Boltzmann's constant.
 *
 *     B = T⁴ [F(λ₂T) − F(λ₁T)]
 *
 * @remarks
 * The sensor's sensitivity is taken as even over its band and zero outside. Source: Planck's law.
 *
 * @param temperature_K - of the black body [K]
 * @param band - wavelengths
 * @returns radiation over σ [K⁴]
 *
 * @example
 * bandRadiation(773.15, { low_m: 8e-6, high_m: 14e-6 }) // => 6.2945e10
 */
export function bandRadiation(temperature_K: number, { low_m, high_m }: Band): number {
  const share = blackbodyShare(high_m * temperature_K) - blackbodyShare(low_m * temperature_K);
  return temperature_K ** 4 * share;
}

/**
 * Temperature that a sensor shows of a surface whose emissivity is not the one set.
 *
 *     ε_set B(T_shown) + (1 − ε_set) B(T_refl) = ε B(T) + (1 − ε) B(T_refl)
 *
 * @remarks
 * The sensor is assumed to know the reflected temperature. The spot is filled by one temperature, the air clear.
 * Source: balance of what a grey surface gives off and mirrors, in any text on radiation thermometry.
 *
 * @param true_K - of the surface [K]
 * @param emissivity - of the surface within the band [-]
 * @param sensor - its band, setting and what is mirrored
 * @returns shown temperature [K]
 *
 * @example
 * shownTemperature(773.15, 0.75, { band: { low_m: 8e-6, high_m: 14e-6 }, set: 0.95, reflected_K: 303.15 }) // => 701.23
 */
export function shownTemperature(true_K: number, emissivity: number, sensor: Sensor): number {
  return seenThrough(true_K, { from: emissivity, to: sensor.set }, sensor);
}

/**
 * Temperature of a surface of known emissivity of which a sensor showed another.
 *
 *     ε B(T) + (1 − ε) B(T_refl) = ε_set B(T_shown) + (1 − ε_set) B(T_refl)
 *
 * @remarks
 * The inverse of `shownTemperature`. Source: the same balance.
 *
 * @param shown_K - what the sensor showed [K]
 * @param emissivity - of the surface within the band [-]
 * @param sensor - its band, setting and what is mirrored
 * @returns temperature of the surface [K]
 *
 * @example
 * trueTemperature(701.23, 0.75, { band: { low_m: 8e-6, high_m: 14e-6 }, set: 0.95, reflected_K: 303.15 }) // => 773.15
 */
export function trueTemperature(shown_K: number, emissivity: number, sensor: Sensor): number {
  return seenThrough(shown_K, { from: sensor.set, to: emissivity }, sensor);
}

/** The temperature that gives the same signal with another emissivity; the band's radiation rises with temperature, so halving finds it. */
function seenThrough(
  temperature_K: number,
  { from, to }: { from: number; to: number },
  sensor: Sensor,
): number {
  const mirrored = bandRadiation(sensor.reflected_K, sensor.band);
  const wanted = (from * bandRadiation(temperature_K, sensor.band) + (to - from) * mirrored) / to;
  let [low, high] = [COLDEST_K, HOTTEST_K];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (bandRadiation(middle, sensor.band) < wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Length of the spot that a sensor sees, across the direction in which it leans.
 *
 *     l = L [tan(θ + φ/2) − tan(θ − φ/2)]
 *
 * @remarks
 * Upright it is the spot's diameter, 2 L tan(φ/2). Makers state φ for 90 % of the energy, some for 50 %.
 * Source: geometry.
 *
 * @param distance_m - from the sensor to the surface, square to it [m]
 * @param fieldOfView_rad - full angle of the sensor's cone φ [rad]
 * @param lean_rad - angle θ between the sensor and the surface's normal [rad]
 * @returns length of the spot [m]
 *
 * @example
 * spotLength(0.06, 0.174533) // => 0.010499
 * spotLength(0.05, 0.610865, 0.523599) // => 0.04348
 */
export function spotLength(distance_m: number, fieldOfView_rad: number, lean_rad = 0): number {
  const half = fieldOfView_rad / 2;
  return distance_m * (Math.tan(lean_rad + half) - Math.tan(lean_rad - half));
}
