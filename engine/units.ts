/** Conversions between the trade's units and SI, used once on the way in (compile) and once on the way out (summary). */

/** Zero of the Celsius scale. Source: BIPM, The International System of Units, 9th edition (2019), 2.3.1 [K] */
export const CELSIUS_ZERO_K = 273.15;
/** 1 m/s in km/h, exact [km/h per m/s] */
export const KMH_PER_MPS = 3.6;
/** International mile, exact (International yard and pound agreement, 1959) [m] */
export const MILE_M = 1609.344;
/** International foot, exact (International yard and pound agreement, 1959) [m] */
export const FOOT_M = 0.3048;
/** Knot, exact: 1852 m an hour. Source: BIPM, The International System of Units, 9th edition (2019), table 8 [m/s] */
export const KNOT_MPS = 1852 / 3600;
/** Bar, exact. Source: BIPM, The International System of Units, 9th edition (2019), table 8 [Pa] */
export const PA_PER_BAR = 1e5;
/** Pound-force on a square inch, from the pound (0.45359237 kg, 1959), standard gravity and the inch (0.0254 m) [Pa] */
export const PSI_PA = 6894.757293168;
/** Standard acceleration of free fall. Source: ISO 80000-3 [m/s²] */
export const GRAVITY_MPS2 = 9.80665;

export const kelvin = (celsius: number): number => celsius + CELSIUS_ZERO_K;
export const celsius = (kelvins: number): number => kelvins - CELSIUS_ZERO_K;
export const mpsFromKmh = (kmh: number): number => kmh / KMH_PER_MPS;
export const kmhFromMps = (mps: number): number => mps * KMH_PER_MPS;
export const radians = (degrees: number): number => (degrees * Math.PI) / 180;
