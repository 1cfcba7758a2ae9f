/** The whole file as columns of numbers, and what of it was no number. */
import { isNothing, kindOf, numberOf, valueOf, type CellKind } from './cell.ts';
import { blocksOf, cutRows, type Format } from './cut-rows.ts';
import { rowText, type Header } from './header.ts';
import { count, Tally } from './words.ts';

const ROWS_SHOWN = 12;

/** Cells of text that are kept to be named; beyond it they are counted [-] */
const FAULTS_KEPT = 200_000;

/** First cells of rows that sum up a column. */
const SUMMARY =
  /^(min|max|avg|ave|mean|average|minimum|maximum|median|std|st\.? ?dev|sum|total|count|range|mittel|mittelwert|summe|moyenne|media|promedio)(\b[^\d]{0,20})?$/i;

/** A cell that is neither a number nor says that there is none. */
export interface BadCell {
  /** Index among the rows of numbers. */
  at: number;
  text: string;
}

export interface Columns {
  kinds: CellKind[];
  values: Float64Array[];
  bad: BadCell[][];
  /** Row of the file of each row of numbers; the first line is 1. */
  rowNumbers: Uint32Array;
  firstRows: string[][];
  /** The first cell of each column of text that is no number; empty elsewhere. */
  texts: string[];
  mended: string[];
}

/** The kind of most cells of each column. */
export function kindsOf(
  rows: readonly string[][],
  { names, firstData }: Header,
  { decimal }: Format,
): CellKind[] {
  const data = rows.slice(firstData);
  return names.map((_, i) => {
    const counts: Record<CellKind, number> = { number: 0, clock: 0, 'date-time': 0, text: 0 };
    for (const row of data) {
      const kind = kindOf(row[i] ?? '', decimal);
      if (kind) counts[kind] += 1;
    }
    const kinds = Object.entries(counts) as [CellKind, number][];
    const [kind, most] = kinds.reduce((a, b) => (b[1] > a[1] ? b : a));
    return most === 0 ? 'number' : kind;
  });
}

/** Rows of numbers as they come in; grows as the file turns out longer than its first lines promise. */
class Rows {
  values: Float64Array[];
  rowNumbers: Uint32Array;
  length = 0;

  constructor(width: number, room: number) {
    this.values = Array.from({ length: width }, () => new Float64Array(room));
    this.rowNumbers = new Uint32Array(room);
  }

  makeRoom(): void {
    if (this.length < this.rowNumbers.length) return;
    const room = Math.ceil(this.length * 1.5) + 1024;
    const old = this.rowNumbers;
    this.rowNumbers = new Uint32Array(room);
    this.rowNumbers.set(old);
    this.values = this.values.map((column) => {
      const longer = new Float64Array(room);
      longer.set(column);
      return longer;
    });
  }
}

/** How many characters a row has at least, to guess how many rows there are. */
const roomFor = (text: string, width: number): number => Math.ceil(text.length / (6 * width)) + 1024;

export function readColumns(
  text: string,
  format: Format,
  header: Header,
  kinds: CellKind[],
  progress: (share: number) => void,
): Columns {
  const width = header.names.length;
  const rows = new Rows(width, roomFor(text, width));
  const bad: BadCell[][] = kinds.map(() => []);
  const firstRows: string[][] = [];
  const words = kinds.map(() => '');
  const left = {
    repeated: new Tally(),
    text: new Tally(),
    summary: new Tally(),
    long: new Tally(),
    short: new Tally(),
  };
  const { decimal } = format;
  let fileRow = 0;
  let filled = 0;

  /** Fills the next row; says how many numbers and how many texts it has. */
  const fill = (row: readonly string[], at: number): { numbers: number; texts: number; said: number } => {
    let numbers = 0;
    let texts = 0;
    let said = 0;
    for (let i = 0; i < width; i++) {
      const cell = row[i] ?? '';
      const kind = kinds[i]!;
      const value = kind === 'number' ? numberOf(cell, decimal) : valueOf(cell, kind, decimal);
      rows.values[i]![at] = value;
      if (kind === 'text' && words[i] === '' && Number.isNaN(numberOf(cell, decimal))) words[i] = cell.trim();
      if (value === value && kind !== 'text') numbers += 1;
      else if (kind !== 'text' && !isNothing(cell)) texts += 1;
      else if (cell.trim() !== '') said += 1;
    }
    return { numbers, texts, said };
  };

  for (const { block, share } of blocksOf(text)) {
    for (const row of cutRows(block, format)) {
      fileRow += 1;
      if (row.length < 2 && (row[0] ?? '').trim() === '') continue;
      if (row.length > 1 && row[0] === '' && row.every((cell) => cell.trim() === '')) continue;
      filled += 1;
      if (filled <= header.firstData) continue;
      if (row.length > width && row.slice(width).some((cell) => cell.trim() !== '')) {
        left.long.note(fileRow);
        continue;
      }
      rows.makeRoom();
      const at = rows.length;
      const { numbers, texts, said } = fill(row, at);
      if (numbers === 0 && (texts > 0 || said > 0)) {
        (header.repeated.has(rowText(row)) ? left.repeated : left.text).note(fileRow);
        continue;
      }
      if (texts + said > 0 && SUMMARY.test((row[0]!.trim() || row[1]?.trim()) ?? '')) {
        left.summary.note(fileRow);
        continue;
      }
      if (texts > 0) noteBad(row, at);
      if (row.length < width) left.short.note(fileRow);
      rows.rowNumbers[at] = fileRow;
      rows.length += 1;
      if (firstRows.length < ROWS_SHOWN) firstRows.push(shown(row, at));
    }
    progress(share);
  }

  function noteBad(row: readonly string[], at: number): void {
    for (let i = 0; i < width; i++) {
      const cell = row[i] ?? '';
      if (kinds[i] === 'text' || !Number.isNaN(rows.values[i]![at]!) || isNothing(cell)) continue;
      if (bad[i]!.length < FAULTS_KEPT) bad[i]!.push({ at, text: cell.trim().slice(0, 40) });
    }
  }

  function shown(row: readonly string[], at: number): string[] {
    return kinds.map((kind, i) => {
      const value = rows.values[i]![at]!;
      if (kind === 'number') return Number.isNaN(value) ? '' : `${value}`;
      return isNothing(row[i] ?? '') ? '' : row[i]!.trim().replace(',', kind === 'text' ? ',' : '.');
    });
  }

  return {
    kinds,
    values: rows.values.map((column) => column.slice(0, rows.length)),
    bad,
    rowNumbers: rows.rowNumbers.slice(0, rows.length),
    firstRows,
    texts: words,
    mended: [
      left.repeated.sentence((n) => `${count(n, 'repeated header')} left out`),
      left.text.sentence((n) => `${count(n, 'row')} without numbers left out`),
      left.summary.sentence((n) => `${count(n, 'row')} of sums (lowest, highest, mean) left out`),
      left.long.sentence((n) => `${count(n, 'row')} with more cells than columns left out`),
      left.short.sentence(
        (n) => `${count(n, 'row')} with fewer cells than columns; what is missing counts as blank`,
      ),
    ].filter((sentence) => sentence !== ''),
  };
}
