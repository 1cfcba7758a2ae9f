/** The one place where the engine's SI and the scenario's own units become what a person reads, and back again. */

/** Which of the other units a person has chosen, each by itself. */
export interface UnitChoice {
  fahrenheit: boolean;
  mph: boolean;
  /** Of length: inches, and feet and miles where those are the size. */
  inches: boolean;
  psi: boolean;
  poundsPerMinute: boolean;
  pounds: boolean;
}

/** A unit as shown, and what makes it of the scenario's own. */
export interface Unit {
  name: string;
  times: number;
  plus: number;
  /** Decimals that it needs beyond those of the scenario's own unit. */
  more: number;
}

// All exact. Source: NIST Special Publication 811 (2008), appendix B.8; foot, mile and pound by the agreement of 1959
const INCH_MM = 25.4;
const FOOT_M = 0.3048;
const MILE_KM = 1.609344;
const POUND_KG = 0.45359237;
/** Pound-force over a square inch, from the pound, standard gravity and the inch [kPa] */
const PSI_KPA = 6.894757293168;

type Other = readonly [chosen: keyof UnitChoice, name: string, times: number, plus?: number, more?: number];

/** The other unit of each of the scenario's own. K is a difference: a degree of it is 9/5 of a degree Fahrenheit, from no zero. */
const OTHERS: Readonly<Record<string, Other>> = {
  '°C': ['fahrenheit', '°F', 1.8, 32],
  K: ['fahrenheit', '°F', 1.8],
  'km/h': ['mph', 'mph', 1 / MILE_KM],
  mm: ['inches', 'in', 1 / INCH_MM, 0, 2],
  'cm²': ['inches', 'in²', (10 / INCH_MM) ** 2, 0, 1],
  m: ['inches', 'ft', 1 / FOOT_M],
  km: ['inches', 'mi', 1 / MILE_KM],
  kPa: ['psi', 'psi', 1 / PSI_KPA, 0, 1],
  Pa: ['psi', 'psi', 1e-3 / PSI_KPA, 0, 3],
  'g/s': ['poundsPerMinute', 'lb/min', 0.06 / POUND_KG, 0, 1],
  kg: ['pounds', 'lb', 1 / POUND_KG],
};

/** None of them: the units that scenarios are written in. */
export const METRIC: Readonly<UnitChoice> = {
  fahrenheit: false,
  mph: false,
  inches: false,
  psi: false,
  poundsPerMinute: false,
  pounds: false,
};

let choice = METRIC;

/** From now on the units are read from this; where it is reactive, what is written with it follows. */
export const followChoice = (of: Readonly<UnitChoice>): void => void (choice = of);

/** The unit that a number in one of the scenario's own is shown in; another's name is left as it is. */
export function unitFor(own: string): Unit {
  const other = OTHERS[own];
  if (!other || !choice[other[0]]) return { name: own, times: 1, plus: 0, more: 0 };
  const [, name, times, plus = 0, more = 0] = other;
  return { name, times, plus, more };
}

export const unitName = (own: string): string => unitFor(own).name;

/** A number in one of the scenario's own units as it is shown, and back. */
export const inUnit = (value: number, { times, plus }: Unit): number => value * times + plus;
export const fromUnit = (shown: number, { times, plus }: Unit): number => (shown - plus) / times;

/** A step that is round in the unit shown: the nearest of 1 and 5, whatever their power of ten. */
export function roundStep(step: number, { times }: Unit): number {
  if (times === 1) return step;
  const power = 10 ** Math.floor(Math.log10(step * times));
  const digits = (step * times) / power;
  return power * (digits < 5 ** 0.5 ? 1 : digits < 50 ** 0.5 ? 5 : 10);
}

/** As a unit is typed: without case, signs and blanks. "kph" is said for km/h, a quote is an inch. */
const bare = (unit: string): string =>
  unit
    .toLowerCase()
    .replace(/[°/.\s]/g, '')
    .replace(/^lbs/, 'lb')
    .replace('kph', 'kmh')
    .replace('"', 'in');

/** A number typed with a unit, in the unit shown; null where that is none of its kind. */
export function typedIn(value: number, typed: string, shown: string): number | null {
  const word = bare(typed);
  if (word === '' || word === bare(shown)) return value;
  for (const [own, [, name, times, plus = 0]] of Object.entries(OTHERS)) {
    if (own === 'K') continue;
    if (name === shown && word === bare(own)) return value * times + plus;
    if (own === shown && word === bare(name)) return (value - plus) / times;
  }
  return null;
}

/** A temperature in the unit shown. A difference has no zero: its unit is K's. */
export const degrees = (temperature_K: number): number => inUnit(celsius(temperature_K), unitFor('°C'));

export const celsius = (temperature_K: number): number => temperature_K - 273.15;

export const kelvin = (temperature_C: number): number => temperature_C + 273.15;

export const kmh = (speed_mps: number): number => speed_mps * 3.6;
export const mpsFromKmh = (speed_kmh: number): number => speed_kmh / 3.6;
