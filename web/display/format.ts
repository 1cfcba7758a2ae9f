/** How numbers are written: rounded to the doubt, a space that does not break before the unit. */
import { degrees, inUnit, unitFor, unitName } from './units.ts';

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

/** What a level of a brake temperature is rounded to, in the unit shown: 5 °C or 10 °F. */
export const levelStep = (): number => (unitName('°C') === '°C' ? 5 : 10);

/** "685 °C": a level of a brake temperature. */
export const level = (temperature_K: number): string =>
  `${levelNumber(temperature_K)}${NBSP}${unitName('°C')}`;

/** "685": the same for a column whose header names the unit. */
export const levelNumber = (temperature_K: number): string =>
  decimal(Math.round(degrees(temperature_K) / levelStep()) * levelStep());

/** "650 °C": a limit, as it was given. */
export const limit = (temperature_K: number): string =>
  `${limitNumber(temperature_K)}${NBSP}${unitName('°C')}`;

/** "650": the same beside an axis that names the unit. */
export const limitNumber = (temperature_K: number): string => decimal(degrees(temperature_K));

/** "32 K" or "58 °F": the size of a difference. */
export const kelvins = (difference_K: number): string =>
  isNothing(difference_K) ? `less than 1${NBSP}${unitName('K')}` : withUnit(Math.abs(difference_K), 'K');

/** Rounded to the unit shown, nothing is left of it. */
export const isNothing = (difference_K: number): boolean =>
  Math.abs(inUnit(difference_K, unitFor('K'))) < 0.5;

/** "70 %"; "61.4 %" where it is not whole. */
export const percent = (value: number): string =>
  `${decimal(value, Math.abs(value - Math.round(value)) < 0.05 ? 0 : 1)}${NBSP}%`;

/** "26": a number in one of the scenario's own units, as the unit shown has it. */
export function numberIn(value: number, own: string, digits = 0): string {
  const unit = unitFor(own);
  const shown = inUnit(value, unit);
  return decimal(shown, unit.name === own ? digits : digitsOf(shown, Math.max(digits, unit.more)));
}

/** "26 °C" from a scenario's own unit. */
export const withUnit = (value: number, own: string, digits = 0): string =>
  own === '' ? decimal(value, digits) : `${numberIn(value, own, digits)}${NBSP}${unitName(own)}`;

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
