/** The one place where the engine's SI and the scenario's own units become what a person reads, and back again. */

/** A unit as shown, and what makes it of the scenario's own. */
export interface Unit {
  name: string;
  times: number;
  plus: number;
  /** Decimals that it may need where the scenario's own unit has fewer. */
  more: number;
}

// All exact. Source: NIST Special Publication 811 (2008), appendix B.8; foot, mile and pound by the agreement of 1959
const INCH_MM = 25.4;
const FOOT_M = 0.3048;
const MILE_KM = 1.609344;
const POUND_KG = 0.45359237;
/** Pound-force over a square inch, from the pound, standard gravity and the inch [kPa] */
const PSI_KPA = 6.894757293168;

type Other = readonly [name: string, times: number, plus?: number, more?: number, chosenWith?: string];

/** The other unit of each of the scenario's own. K is a difference: a degree of it is 9/5 of a degree Fahrenheit, from no zero. */
export const OTHERS: Readonly<Record<string, Other>> = {
  '°C': ['°F', 1.8, 32],
  K: ['°F', 1.8],
  'km/h': ['mph', 1 / MILE_KM],
  mm: ['in', 1 / INCH_MM, 0, 2],
  'cm²': ['in²', (10 / INCH_MM) ** 2, 0, 1, 'in'],
  m: ['ft', 1 / FOOT_M, 0, 0, 'in'],
  km: ['mi', 1 / MILE_KM, 0, 0, 'in'],
  kPa: ['psi', 1 / PSI_KPA, 0, 3],
  Pa: ['psi', 1e-3 / PSI_KPA, 0, 3],
  'g/s': ['lb/min', 0.06 / POUND_KG, 0, 2],
  kg: ['lb', 1 / POUND_KG],
};

/** Names of the other units chosen, with blanks between them. */
let chosen = (): string => '';

/** From now on the choice is read from there; where that is reactive, what is written with it follows. */
export const followChoice = (read: () => string): void => void (chosen = read);

/** The unit that a number in one of the scenario's own is shown in; another's name is left as it is. */
export function unitFor(own: string): Unit {
  const [name = '', times = 1, plus = 0, more = 0, chosenWith = name] = OTHERS[own] ?? [];
  return name && chosen().split(' ').includes(chosenWith)
    ? { name, times, plus, more }
    : { name: own, times: 1, plus: 0, more: 0 };
}

export const unitName = (own: string): string => unitFor(own).name;

/** A number in one of the scenario's own units as it is shown, and back. */
type Scale = Pick<Unit, 'times' | 'plus'>;
export const inUnit = (value: number, { times, plus }: Scale): number => value * times + plus;
export const fromUnit = (shown: number, { times, plus }: Scale): number => (shown - plus) / times;

/** A step that is round in the unit shown: the nearest of 1 and 5, whatever their power of ten. */
export function roundStep(step: number, { times }: Unit): number {
  if (times === 1) return step;
  const power = 10 ** Math.floor(Math.log10(step * times));
  const digits = (step * times) / power;
  return power * (digits < 5 ** 0.5 ? 1 : digits < 50 ** 0.5 ? 5 : 10);
}

/** A temperature in the unit shown. A difference has no zero: its unit is K's. */
export const degrees = (temperature_K: number): number => inUnit(celsius(temperature_K), unitFor('°C'));

export const celsius = (temperature_K: number): number => temperature_K - 273.15;

export const kelvin = (temperature_C: number): number => temperature_C + 273.15;

export const kmh = (speed_mps: number): number => speed_mps * 3.6;
export const mpsFromKmh = (speed_kmh: number): number => speed_kmh / 3.6;
