/** A law's range, and what a run used of it, in words. */
import type { RangeUse } from '../../engine/index.ts';
import { digitsOf, grouped, NBSP } from './format.ts';
import { celsius, inUnit, unitFor, unitName } from './units.ts';

type Ends = Pick<RangeUse, 'unit' | 'quantity'>;

/** Levels of temperature are no differences, though both are in kelvin. */
const isLevel = ({ unit, quantity }: Ends): boolean => unit === 'K' && quantity === 'temperature';

/** The unit that a scenario would give it in. */
const ownUnit = (of: Ends): string => (isLevel(of) ? '°C' : of.unit);

/** Digits at most, where a range is left by very little. */
const MOST_DIGITS = 7;

/** Three digits, or as many as it takes to see that a range is left. */
function digitsFor(range: RangeUse): number {
  const { low, high, from, to } = range;
  for (let digits = 3; digits < MOST_DIGITS; digits++) {
    const say = (value: number): string => number(value, range, digits);
    if (!(from < low && say(from) === say(low)) && !(to > high && say(to) === say(high))) return digits;
  }
  return MOST_DIGITS;
}

function number(value: number, of: Ends, digits: number): string {
  const read = inUnit(isLevel(of) ? celsius(value) : value, unitFor(ownUnit(of)));
  const rounded = Number(read.toPrecision(digits));
  return Math.abs(rounded) < 100
    ? String(rounded).replace('-', '\u2212')
    : grouped(rounded, digitsOf(rounded, MOST_DIGITS));
}

function between(low: number, high: number, range: RangeUse): string {
  const unit = range.unit && `${NBSP}${unitName(ownUnit(range))}`;
  const digits = digitsFor(range);
  const [from, to] = [number(low, range, digits), number(high, range, digits)];
  return from === to ? `${from}${unit}` : `${from} to ${to}${unit}`;
}

/** "500 to 100 000" */
export const rangeWords = (range: RangeUse): string => between(range.low, range.high, range);

/** "4 620 to 6 160", or one number where it does not move. */
export const usedWords = (range: RangeUse): string => between(range.from, range.to, range);
