/** Why a text makes no rows of numbers, as precisely as can be told. */
import { isNothing, isValue } from './cell.ts';
import { cutRows } from './cut-rows.ts';
import type { Sample } from './sample.ts';
import type { Delimiter } from '../circuit/understood.ts';

const NO_TABLE = 'file: expected rows of numbers, cells parted by comma, semicolon, tab, bar or spaces';
const BOTH_MARKS =
  'file: some of its numbers have a decimal point and some a decimal comma; only one can be read';
const TOO_WIDE = 'file: expected at most 400 columns; export fewer channels';

const LEAST_LINES = 20;
const MOST_COLUMNS = 400;
/** A decimal comma beside each comma that parts cells. */
const MOST_COMMAS = 2 * MOST_COLUMNS;
/** Longer than the longest line of so many columns [characters] */
const MOST_LINE = 40_000;
/** Of the lines of a table this share has numbers in its first column. */
const MOSTLY = 0.6;

const DELIMITERS: readonly Delimiter[] = [',', ';', '\t', '|'];

/** A line that no table of channels has: cutting it would take longer than reading a million rows. */
export const tooWide = ({ head, pieces }: Sample): string =>
  [...head, ...pieces].some(isTooWide) ? TOO_WIDE : '';

function isTooWide(line: string): boolean {
  if (line.length > MOST_LINE) return true;
  return DELIMITERS.some((delimiter) => {
    let cells = 0;
    for (let at = line.indexOf(delimiter); at >= 0; at = line.indexOf(delimiter, at + 1)) cells++;
    return cells >= (delimiter === ',' ? MOST_COMMAS : MOST_COLUMNS);
  });
}

export function whyNoTable({ head }: Sample): string {
  if (hasBothMarks(head)) return BOTH_MARKS;
  for (const delimiter of DELIMITERS) {
    const found = wordsBeside(head, delimiter);
    if (found) return found;
  }
  return NO_TABLE;
}

/** Decimal points and decimal commas line after line, cut by what is neither. */
const hasBothMarks = (head: readonly string[]): boolean =>
  head.filter((line) => {
    const cells = line.split(/[;\t|]| +/);
    return (
      cells.length > 1 &&
      cells.some((cell) => /^-?\d+\.\d+$/.test(cell.trim())) &&
      cells.some((cell) => /^-?\d+,\d+$/.test(cell.trim()))
    );
  }).length > LEAST_LINES;

/** A table whose one column holds numbers and whose others do not. */
function wordsBeside(head: readonly string[], delimiter: Delimiter): string {
  const rows = head.map((line) => cutRows(line, { delimiter, decimal: '.', pairs: false })[0] ?? []);
  const isNumber = (cell = ''): boolean => !isNothing(cell) && isValue(cell, '.');
  const data = rows.filter((row) => row.length > 1 && row.filter(isNumber).length === 1);
  if (data.length < LEAST_LINES || data.length < MOSTLY * head.length) return '';
  const row = data[0]!;
  const at = row.findIndex((cell) => !isNumber(cell));
  const got = row[at]!.trim() === '' ? 'nothing' : `'${row[at]!.trim().slice(0, 40)}'`;
  return `file: its column ${at + 1} holds no numbers, e.g. ${got} in line ${rows.indexOf(row) + 1}`;
}
