/** Names and units of the columns, from the rows above the numbers. */
import { isNothing, isValue, unitBehind } from './cell.ts';
import type { Format } from './cut-rows.ts';
import { usualWidth } from './guess-format.ts';
import { roleNamed } from './role-names.ts';
import { isUnit, unitNamed } from './units.ts';

/** Rows above the numbers in which the names are looked for. */
const ROWS_ABOVE = 8;

/** Rows of numbers in a run that count as the start of the data, of which one may be spoilt. */
const RUN = 6;

export interface Header {
  /** One for each column: 'column 3' where it has no name. */
  names: string[];
  /** As stated beside the name or in a row of units; empty where none is. */
  units: string[];
  isNamed: boolean;
  /** Rows, counted without blank ones, before the first row of numbers. */
  firstData: number;
  /** Rows that are no numbers and may be repeated further on, as text. */
  repeated: ReadonlySet<string>;
}

export const rowText = (row: readonly string[]): string => row.map((cell) => cell.trim()).join('\u0001');

const BRACKETED = /^(.*?)\s*[([{<]\s*([^)\]}>]*?)\s*[)\]}>]\s*$/;
/** A column of times that is called by its unit. */
const TIME_UNITS = /^(millis|micros|nanos|ms|us|µs|μs|ns)$/i;
const WORDED = /^(.+?)(?:\s+in\s+|\s*[,/|:;]\s*|[_\s-]+)([^_\s]+)$/;

/** 'Speed (km/h)', 'speed_kmh', 'Speed in km/h' and 'Speed, km/h' in their two parts. */
function splitName(cell: string): { name: string; unit: string } {
  const text = cell.trim().replace(/\s+/g, ' ');
  const bracketed = BRACKETED.exec(text);
  if (bracketed?.[1]) return { name: bracketed[1].trim(), unit: bracketed[2]! };
  const worded = WORDED.exec(text.replace(/(km|mi|m)\/(h|s)$/i, '$1∕$2'));
  const unit = worded?.[2]?.replace('∕', '/') ?? '';
  const isWhole = roleNamed(text) !== undefined && !/[/_,²%]|mph|kph|kmh/i.test(text.slice(-5));
  if (TIME_UNITS.test(text)) return { name: text, unit: unitNamed('time', text)! };
  return worded && !isWhole && isUnitOf(unit, worded[1]!)
    ? { name: worded[1]!.trim(), unit }
    : { name: text, unit: '' };
}

/** Without brackets a lone letter is a unit only where the name before it has such a unit: 'Kanal A' is a name. */
function isUnitOf(unit: string, name: string): boolean {
  if (!/^[a-z]$/i.test(unit)) return isUnit(unit);
  const named = roleNamed(name);
  return named !== undefined && unitNamed(named.role, unit) !== undefined;
}

const unitCell = (cell: string): string => cell.replace(/[()[\]{}<>]/g, '').trim();

/** Names and units by the first lines of the file, blank ones left out. */
export function headerOf(
  rows: readonly string[][],
  pieces: readonly string[][],
  { decimal }: Format,
): Header | undefined {
  const width = usualWidth(rows, decimal) || usualWidth(pieces, decimal);
  const isData = (row: readonly string[]): boolean =>
    row.length <= width + 1 &&
    row.filter((cell) => cell.trim() !== '' && isValue(cell, decimal)).length >= Math.min(2, width);
  const startOf = (is: (row: readonly string[]) => boolean): number =>
    rows.findIndex((row, i) => {
      const run = rows.slice(i, i + RUN);
      return is(row) && row.length === width && run.filter(is).length >= Math.min(run.length, RUN - 1);
    });
  // A column that begins late leaves one number a row above: such rows are data, too.
  const isSparse = (row: readonly string[]): boolean =>
    row.length === width &&
    row.some((cell) => cell.trim() !== '') &&
    row.every((cell) => isNothing(cell) || isValue(cell, decimal)) &&
    row.some((cell) => !isNothing(cell));
  const start = Math.min(...[startOf(isData), startOf(isSparse)].filter((at) => at >= 0));
  if (start === Infinity) return undefined;
  const named = namesAbove(rows, start, width);
  const after =
    named.at === undefined
      ? start
      : named.at + 1 + (named.units && named.unitsAt! > named.at ? named.unitsAt! - named.at : 0);
  const first = rows
    .slice(after, start)
    .findIndex(
      (row) => row.length === width && row.some((cell) => cell.trim() !== '' && isValue(cell, decimal)),
    );
  const names = named.at === undefined ? undefined : rows[named.at];
  const columns = Array.from(
    { length: filledWidth([...rows.slice(start), ...pieces], width, names) },
    (_, i) => {
      const split = splitName(names?.[i] ?? '');
      return {
        name: split.name || `column ${i + 1}`,
        unit: unitCell(named.units?.[i] ?? '') || split.unit || unitInCells(rows.slice(start), i),
      };
    },
  );
  return {
    names: columns.map(({ name }) => name),
    units: columns.map(({ unit }) => unit),
    isNamed: names !== undefined,
    firstData: first >= 0 && names ? after + first : start,
    repeated: new Set([names, named.units].filter((row) => row !== undefined).map(rowText)),
  };
}

/** The unit that every cell of a column carries behind its number. */
function unitInCells(rows: readonly string[][], i: number): string {
  const unit = unitBehind(rows[0]?.[i] ?? '');
  return unit !== '' && rows.every((row) => (row[i] ?? '').trim() === '' || unitBehind(row[i]!) === unit)
    ? unit
    : '';
}

/** Columns that hold anything: a delimiter at the end of each line makes none. */
function filledWidth(rows: readonly string[][], width: number, names: readonly string[] | undefined): number {
  let filled = width;
  const isEmpty = (i: number): boolean =>
    (names?.[i] ?? '').trim() === '' && rows.every((row) => (row[i] ?? '').trim() === '');
  while (filled > 1 && isEmpty(filled - 1)) filled--;
  return filled;
}

interface NamesAbove {
  at?: number;
  units?: readonly string[];
  unitsAt?: number;
}

/** The row with most known names, else the last row of text as wide as the numbers; and a row of units under or over it. */
function namesAbove(rows: readonly string[][], start: number, width: number): NamesAbove {
  const places = Array.from({ length: Math.min(ROWS_ABOVE, start) }, (_, i) => start - 1 - i);
  const known = (at: number): number =>
    rows[at]!.filter((cell) => cell.trim() !== '' && roleNamed(splitName(cell).name) !== undefined).length;
  const filled = (at: number): number => rows[at]!.filter((cell) => cell.trim() !== '').length;
  const isUnits = (at: number): boolean => {
    const cells = rows[at]!.map(unitCell).filter((cell) => cell !== '' && cell !== '-');
    return (
      cells.length > 0 && cells.filter(isUnit).length * 2 > cells.length && known(at) * 2 < cells.length + 1
    );
  };
  const fits = places.filter((at) => filled(at) >= 2 && filled(at) <= width + 1);
  const best = fits.reduce<number | undefined>(
    (a, at) => (known(at) > 0 && (a === undefined || known(at) > known(a)) ? at : a),
    undefined,
  );
  const at = best ?? fits.find((place) => filled(place) * 2 > width && !isUnits(place));
  if (at === undefined) return {};
  const unitsAt = [at + 1, at + 2, at - 1].find((place) => place >= 0 && place < start && isUnits(place));
  return unitsAt === undefined ? { at } : { at, units: rows[unitsAt]!, unitsAt };
}
