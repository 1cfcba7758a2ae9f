/** The one place where the engine's SI numbers become what a person reads. */

/** A temperature. Differences in kelvin are not converted: 10 K is 10 °C of difference. */
export const celsius = (temperature_K: number): number => temperature_K - 273.15;

export const kmh = (speed_mps: number): number => speed_mps * 3.6;

/** Back again, for round marks on an axis. */
export const kelvin = (temperature_C: number): number => temperature_C + 273.15;

export const mpsFromKmh = (speed_kmh: number): number => speed_kmh / 3.6;
