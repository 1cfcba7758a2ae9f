/** What the engine says, its quantities in the units that are shown. */
import type { Quantity, Said } from '../../engine/index.ts';
import { digitsOf, numberIn, withUnit } from './format.ts';

/** Decimals of a number as it was given, at most. */
const MOST_DIGITS = 7;

export const saidWords = (said: Said): string =>
  said.map((part) => (typeof part === 'string' ? part : quantityWords(part))).join('');

function quantityWords({ value, to, unit, digits }: Quantity): string {
  const digitsAt = (end: number): number => digits ?? digitsOf(end, MOST_DIGITS);
  return to === undefined
    ? withUnit(value, unit, digitsAt(value))
    : `${numberIn(value, unit, digitsAt(value))} to ${withUnit(to, unit, digitsAt(to))}`;
}
