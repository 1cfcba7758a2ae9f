/** How numbers are written: rounded to the doubt, a space that does not break before the unit. */
import { celsius } from './units.ts';

export const NBSP = '\u00a0';
const MINUS = '\u2212';

/** A number with at most so many decimals, a true minus sign and no "-0". */
export function decimal(value: number, digits = 0): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? Math.abs(Number(text)).toFixed(digits) : text.replace('-', MINUS);
}

/** "12 400": the same with thousands parted by a space that does not break. */
export const grouped = (value: number, digits = 0): string =>
  decimal(value, digits).replace(/\B(?=(\d{3})+(?!\d))(?<!\..*)/g, NBSP);

/** Decimals that a number needs, at most so many: 2 for 0.85, 1 for 0.5, none for 20. */
export const digitsOf = (value: number, most: number): number =>
  String(Number(value.toFixed(most))).split('.')[1]?.length ?? 0;

/** "685 °C": a level of a brake temperature, to 5 °C. */
export const level = (temperature_K: number): string => `${levelNumber(temperature_K)}${NBSP}°C`;

/** "685": the same for a column whose header names the unit. */
export const levelNumber = (temperature_K: number): string =>
  decimal(Math.round(celsius(temperature_K) / 5) * 5);

/** "650 °C": a limit, as it was given. */
export const limit = (temperature_K: number): string => `${decimal(celsius(temperature_K))}${NBSP}°C`;

/** "32 K": the size of a difference. */
export function kelvins(difference_K: number): string {
  const size = Math.abs(difference_K);
  return size < 0.5 ? `less than 1${NBSP}K` : `${decimal(size)}${NBSP}K`;
}

/** "70 %"; "61.4 %" where it is not whole. */
export const percent = (value: number): string =>
  `${decimal(value, Math.abs(value - Math.round(value)) < 0.05 ? 0 : 1)}${NBSP}%`;

/** "26 °C" from a scenario's own unit. */
export const withUnit = (value: number, unit: string, digits = 0): string =>
  unit === '' ? decimal(value, digits) : `${decimal(value, digits)}${NBSP}${unit}`;

/** "1:36.4", a lap time; "32:05", a time in the stint. */
export function clockTime(time_s: number, digits = 0): string {
  const tenths = Number(time_s.toFixed(digits));
  const minutes = Math.floor(tenths / 60);
  const seconds = (tenths - minutes * 60).toFixed(digits).padStart(digits > 0 ? digits + 3 : 2, '0');
  return `${minutes}:${seconds}`;
}

/** "5 min", or "40 s" below a minute. */
export const minutes = (time_s: number): string =>
  time_s < 59.5 ? `${decimal(time_s)}${NBSP}s` : `${decimal(time_s / 60)}${NBSP}min`;

const SMALL = ['none', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** Small counts as words, as in running text. */
export const countWord = (n: number): string => SMALL[n] ?? String(n);

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
