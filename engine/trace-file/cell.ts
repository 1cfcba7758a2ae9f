/** What one cell of a logger's file says. */
import type { Decimal } from '../circuit/understood.ts';
import { clockSeconds, dateSeconds, isDate } from './clock.ts';

/** How the cells of a column are written. */
export type CellKind = 'number' | 'clock' | 'date-time' | 'text';

const PLAIN = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
/** Thousands are only believed where the decimal mark stands behind them, or where they come twice. */
const GROUPED = {
  '.': /^[+-]?\d{1,3}((,\d{3})+\.\d+|(,\d{3}){2,}|(['’\u00A0\u202F]\d{3})+(\.\d+)?)$/,
  ',': /^[+-]?\d{1,3}((\.\d{3})+,\d+|(\.\d{3}){2,}|(['’\u00A0\u202F]\d{3})+(,\d+)?)$/,
};

/** A number with its unit behind it. */
const WITH_UNIT =
  /^(.*\d)\s*(km\/h|kmh|kph|mph|m\/s|kn|kts?|s|sec|ms|m|km|ft|mi|g|m\/s²|m\/s2|bar|psi|kpa|mpa|%|°)$/i;

/** The unit behind a number; empty where there is none. */
export const unitBehind = (cell: string): string => WITH_UNIT.exec(cell.trim())?.[2] ?? '';

const NOTHING =
  /^(nan|na|n\/a|#n\/a|n\.a\.|null|nil|none|[-–—_*?.]+|[+-]?inf(inity)?|[+-]?∞|[+-]?1[.,]#\w+|#\w+[!?/]*\w*[!?]?|no data)$/i;

/** Whether a cell says that there is nothing: blank, dashes, NaN, infinity, a spreadsheet's error. */
export const isNothing = (cell: string): boolean => cell.trim() === '' || NOTHING.test(cell.trim());

/**
 * A cell of a logger's file as a number.
 *
 * Source: the plain and the exponent form of numbers.
 *
 * @param cell - text of the cell [any]
 * @param decimal - decimal mark, '.' or ',' [-]
 * @returns the number, NaN if the cell is not one [any]
 *
 * @example
 * numberOf(' 12,5', ',') // => 12.5
 */
export function numberOf(cell: string, decimal: Decimal): number {
  if (decimal === ',')
    return cell.includes('.') ? oddNumber(cell, ',') : pointNumber(cell.replace(',', '.'), cell, ',');
  return pointNumber(cell, cell, '.');
}

/** The fast way for the millions of plain cells; whatever JavaScript reads more freely than a logger goes the slow way. */
function pointNumber(text: string, cell: string, decimal: Decimal): number {
  const value = Number(text);
  const second = text.charCodeAt(1);
  const isPlain = value - value === 0 && (value !== 0 || text.includes('0')) && !(second > 57);
  return isPlain ? value : oddNumber(cell, decimal);
}

function oddNumber(cell: string, decimal: Decimal): number {
  const bare = WITH_UNIT.exec(cell.trim())?.[1]?.trim() ?? cell.trim();
  const text = bare.replace(/^[−–]/, '-');
  if (GROUPED[decimal].test(text)) {
    return Number(text.replace(decimal === '.' ? /[,'’\s]/g : /[.'’\s]/g, '').replace(',', '.'));
  }
  if (decimal === ',' && text.includes('.')) return NaN;
  const point = decimal === ',' ? text.replace(',', '.') : text;
  return PLAIN.test(point) ? Number(point) : NaN;
}

/** The kind of one cell; null where it says nothing. */
export function kindOf(cell: string, decimal: Decimal): CellKind | null {
  if (!Number.isNaN(numberOf(cell, decimal))) return 'number';
  if (isNothing(cell)) return null;
  if (!Number.isNaN(clockSeconds(cell))) return 'clock';
  return Number.isNaN(dateSeconds(cell)) ? 'text' : 'date-time';
}

/** Whether a cell is what rows of measurements are made of. */
export const isValue = (cell: string, decimal: Decimal): boolean =>
  kindOf(cell, decimal) !== 'text' || isDate(cell);

/** 'Lap 3' counts, whatever it is called. */
const numberBehind = (cell: string): number => Number(/^\D{1,16}(\d{1,6})$/.exec(cell.trim())?.[1] ?? NaN);

/** Clocks and date-times are in seconds. */
export function valueOf(cell: string, kind: CellKind, decimal: Decimal): number {
  switch (kind) {
    case 'number':
      return numberOf(cell, decimal);
    case 'clock':
      return clockSeconds(cell);
    case 'date-time':
      return dateSeconds(cell);
    case 'text':
      return numberBehind(cell);
  }
}
