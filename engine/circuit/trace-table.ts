import { dsvFormat } from 'd3-dsv';

export type Delimiter = ',' | ';' | '\t';
export type Decimal = '.' | ',';

/** A logger's file cut into cells. Rows keep their place: row 0 is the first line of the file. */
export interface TraceTable {
  delimiter: Delimiter;
  decimal: Decimal;
  rows: string[][];
  /** first row of numbers */
  firstData: number;
}

const READINGS: readonly [Delimiter, Decimal][] = [
  [',', '.'],
  [';', '.'],
  [';', ','],
  ['\t', '.'],
  ['\t', ','],
];

/** Lines that decide: a preamble and some seconds of data. */
const LINES_TO_GUESS = 300;

/** Rows of numbers in a run that count as the start of the data. */
const RUN = 5;

const PLAIN_NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/**
 * A cell of a logger's file as a number.
 *
 * Source: the plain and the exponent form of numbers; thousands separators are not accepted.
 *
 * @param cell - text of the cell [any]
 * @param decimal - decimal mark, '.' or ',' [-]
 * @returns the number, NaN if the cell is not one [any]
 *
 * @example
 * numberOf(' 12,5', ',') // => 12.5
 */
export function numberOf(cell: string | undefined, decimal: Decimal): number {
  const text = (cell ?? '').trim();
  const plain = decimal === ',' ? text.replace(',', '.') : text;
  const isForeign = decimal === ',' && text.includes('.');
  return PLAIN_NUMBER.test(plain) && !isForeign ? Number(plain) : NaN;
}

export const isBlank = (row: readonly string[]): boolean => row.every((cell) => cell.trim() === '');

/** Rows cut at the delimiter; an empty cell behind a trailing delimiter is dropped. */
function cut(text: string, delimiter: Delimiter): string[][] {
  return dsvFormat(delimiter)
    .parseRows(text)
    .map((row) => (row.length > 1 && row.at(-1)!.trim() === '' ? row.slice(0, -1) : row));
}

/** Numbers count for a reading, text in a row of numbers against it. */
function score(row: string[], decimal: Decimal): number {
  const filled = row.filter((cell) => cell.trim() !== '');
  const numbers = filled.filter((cell) => !Number.isNaN(numberOf(cell, decimal))).length;
  return numbers < 2 ? 0 : numbers - 2 * (filled.length - numbers);
}

const isData = (row: string[] | undefined, decimal: Decimal): boolean =>
  row !== undefined && score(row, decimal) > 0;

function startOfData(rows: string[][], decimal: Decimal): number {
  return rows.findIndex((row, i) => {
    const run = rows.slice(i, i + RUN);
    return run.every((other) => isData(other, decimal) && other.length === row.length);
  });
}

/**
 * Guesses delimiter and decimal mark together, by which reading finds most numbers: a decimal comma is what
 * the other readings trip over. Returns nothing if no reading finds a run of rows with two numbers each.
 */
export function tableOf(text: string): TraceTable | undefined {
  const clean = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const head = clean.split('\n', LINES_TO_GUESS).join('\n');
  const scored = READINGS.map(([delimiter, decimal]) => {
    const rows = cut(head, delimiter);
    return {
      delimiter,
      decimal,
      total: rows.reduce((sum, row) => sum + Math.max(0, score(row, decimal)), 0),
    };
  });
  const best = scored.reduce((a, b) => (b.total > a.total ? b : a));
  if (best.total === 0) return undefined;
  const rows = cut(clean, best.delimiter);
  const firstData = startOfData(rows, best.decimal);
  if (firstData < 0) return undefined;
  return { delimiter: best.delimiter, decimal: best.decimal, rows, firstData };
}
