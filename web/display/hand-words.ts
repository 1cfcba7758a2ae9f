/** A calculation by hand as a person writes it: each number with its symbol and its unit. */
import type { HandKind, HandValue } from '../../engine/index.ts';
import { decimal, digitsOf, grouped, NBSP } from './format.ts';
import { celsius, kmh } from './units.ts';

/** Unit, how many of it the SI number is, and the decimals at most. */
type Shown = readonly [unit: string, of: (value: number) => number, digits: number];

const times =
  (factor: number) =>
  (value: number): number =>
    value * factor;
const same = times(1);

const shown: Record<Exclude<HandKind, 'energy' | 'number'>, Shown> = {
  speed: ['km/h', kmh, 0],
  temperature: ['°C', celsius, 0],
  difference: ['K', same, 0],
  power: ['kW', times(1e-3), 1],
  flux: ['MW/m²', times(1e-6), 2],
  pressure: ['Pa', same, 0],
  flow: ['g/s', times(1e3), 0],
  conductance: ['W/K', same, 1],
  coefficient: ['W/m²K', same, 0],
  effusivity: ['J/m²K√s', same, 0],
  'heat capacity': ['J/kgK', same, 0],
  area: ['cm²', times(1e4), 0],
  length: ['mm', times(1e3), 1],
  mass: ['kg', same, 1],
  density: ['kg/m³', same, 3],
  time: ['s', same, 1],
  share: ['%', times(100), 1],
};

/** "214 km/h" */
export function handNumber({ kind, value }: HandValue): string {
  if (!Number.isFinite(value)) return 'no end';
  if (kind === 'energy')
    return value < 1e6 ? `${decimal(value / 1e3)}${NBSP}kJ` : `${decimal(value / 1e6, 2)}${NBSP}MJ`;
  if (kind === 'number') return threeDigits(value);
  const [unit, convert, digits] = shown[kind];
  const number = convert(value);
  return `${grouped(number, digitsOf(number, digits))}${NBSP}${unit}`;
}

/** "0.62", "22.0", "4 500" */
function threeDigits(value: number): string {
  const rounded = Number(value.toPrecision(3));
  return Math.abs(rounded) >= 100 ? grouped(rounded) : String(rounded);
}

/** "V₁ = 214 km/h" */
export const handValue = (value: HandValue): string => `${value.symbol}${NBSP}=${NBSP}${handNumber(value)}`;
