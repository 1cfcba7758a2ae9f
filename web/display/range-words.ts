/** A law's range, and what a run used of it, in words. */
import type { RangeUse } from '../../engine/index.ts';
import { grouped, NBSP } from './format.ts';
import { celsius } from './units.ts';

type Ends = Pick<RangeUse, 'unit' | 'quantity'>;

/** Levels of temperature are read in °C, differences stay in kelvin. */
const isLevel = ({ unit, quantity }: Ends): boolean => unit === 'K' && quantity === 'temperature';

function number(value: number, of: Ends): string {
  const read = isLevel(of) ? celsius(value) : value;
  const rounded = Number(read.toPrecision(3));
  return Math.abs(rounded) >= 100 ? grouped(rounded) : String(rounded).replace('-', '\u2212');
}

function between(low: number, high: number, of: Ends): string {
  const unit = isLevel(of) ? `${NBSP}°C` : of.unit && `${NBSP}${of.unit}`;
  const [from, to] = [number(low, of), number(high, of)];
  return from === to ? `${from}${unit}` : `${from} to ${to}${unit}`;
}

/** "500 to 100 000" */
export const rangeWords = (range: RangeUse): string => between(range.low, range.high, range);

/** "4 620 to 6 160", or one number where it does not move. */
export const usedWords = (range: RangeUse): string => between(range.from, range.to, range);
