/** A calculation by hand as a person writes it: each number with its symbol and its unit, which its equation needs. */
import type { ByHand, HandKind, HandValue } from '../../engine/index.ts';
import { decimal, digitsOf, grouped, limit, NBSP } from './format.ts';
import { celsius, kmh, unitName } from './units.ts';

/** Unit, how many of it the SI number is, and the decimals it has where it has enough digits. */
type Shown = readonly [unit: string, of: (value: number) => number, digits: number];

const times =
  (factor: number) =>
  (value: number): number =>
    value * factor;
const same = times(1);

const shown: Record<Exclude<HandKind, 'energy' | 'number'>, Shown> = {
  speed: ['km/h', kmh, 1],
  temperature: ['°C', celsius, 0],
  difference: ['K', same, 0],
  power: ['kW', times(1e-3), 1],
  flux: ['MW/m²', times(1e-6), 2],
  pressure: ['Pa', same, 0],
  flow: ['g/s', times(1e3), 1],
  conductance: ['W/K', same, 1],
  coefficient: ['W/m²K', same, 1],
  conductivity: ['W/mK', same, 1],
  viscosity: ['µPa\u00a0s', times(1e6), 1],
  diffusivity: ['mm²/s', times(1e6), 2],
  effusivity: ['J/m²K√s', same, 0],
  'heat capacity': ['J/kgK', same, 0],
  area: ['cm²', times(1e4), 1],
  length: ['mm', times(1e3), 1],
  mass: ['kg', same, 1],
  density: ['kg/m³', same, 3],
  time: ['s', same, 2],
  share: ['%', times(100), 1],
  'radiation constant': ['·\u00a010⁻⁸\u00a0W/m²K⁴', times(1e8), 2],
};

/** Digits that a number needs at least, so that the next line can be computed from what is printed. */
const ENOUGH = 3;

/** "214 km/h" */
export function handNumber({ kind, value }: HandValue): string {
  if (!Number.isFinite(value)) return 'no end';
  if (kind === 'energy')
    return value < 1e6
      ? `${decimal(value / 1e3)}${NBSP}kJ`
      : `${decimal(value / 1e6, value < 1e7 ? 3 : 2)}${NBSP}MJ`;
  if (kind === 'number') return threeDigits(value);
  const [unit, convert, least] = shown[kind];
  const number = convert(value);
  const isLevel = kind === 'temperature' || kind === 'difference';
  const isLong = kind === 'time' && number >= 60;
  const digits = isLong ? 1 : isLevel || number === 0 ? least : Math.max(least, decimalsFor(number));
  return `${grouped(number, digitsOf(number, digits))}${NBSP}${unit}`;
}

const decimalsFor = (number: number): number =>
  Math.min(6, ENOUGH - 1 - Math.floor(Math.log10(Math.abs(number))));

/** "0.62", "22.0", "4 500" */
function threeDigits(value: number): string {
  const rounded = Number(value.toPrecision(3));
  return Math.abs(rounded) >= 100 ? grouped(rounded) : String(rounded);
}

/** "V₁ = 214 km/h"; with what it stands for, "γ = 95.5 %, share made on the disc" */
export function handValue(value: HandValue): string {
  const name = value.name === undefined ? '' : `, ${value.name}`;
  return `${value.symbol}${NBSP}=${NBSP}${handNumber(value)}${name}`;
}

/** Where other units are chosen: what the lines are in all the same. */
export const ownUnitsWords = (): string =>
  ['°C', 'km/h', 'mm', 'kg', 'g/s'].some((own) => unitName(own) !== own)
    ? 'in °C, km/h and the units of science, in which the equations hold'
    : '';

/** "Front face 667 °C, turn 7, lap 10, of Club evening" */
export function followedWords(name: string, { peakFace_K, place, lap }: ByHand, stint: string): string {
  return `${name} face ${limit(peakFace_K)}, ${place}, lap${NBSP}${lap}, of ${stint}`;
}
