/** Text cut into rows of cells, block by block so that a large file never stands in memory as cells. */
import { dsvFormat } from 'd3-dsv';
import type { Decimal, Delimiter } from '../circuit/understood.ts';

export interface Format {
  delimiter: Delimiter;
  decimal: Decimal;
  /** Comma parts the cells and marks the decimals too: two cells make one number. */
  pairs: boolean;
}

/** Text of one block; large enough that its overhead is nothing [characters] */
const BLOCK = 1 << 18;

/** Blocks of a small file: enough of them to show progress [-] */
const LEAST_BLOCKS = 20;

const DIGITS = /^\s*\d+\s*$/;

const isPair = (row: readonly string[]): boolean =>
  row.length % 2 === 0 && row.every((cell, i) => i % 2 === 0 || DIGITS.test(cell));

function paired(row: readonly string[]): string[] {
  const filled = row.at(-1)?.trim() === '' ? row.slice(0, -1) : row;
  if (!isPair(filled)) return [...row];
  return Array.from(
    { length: filled.length / 2 },
    (_, i) => `${filled[2 * i]!.trim()},${filled[2 * i + 1]!.trim()}`,
  );
}

/** Rows of a text; a blank line is a row without cells that say anything. */
export function cutRows(text: string, { delimiter, pairs }: Format): string[][] {
  const even = delimiter === ' ' ? text.replace(/[ \t]+/g, ' ').replace(/^ | $/gm, '') : text;
  const rows = dsvFormat(delimiter).parseRows(isOddlyQuoted(even) ? even.replaceAll('"', '') : even);
  return pairs ? rows.map(paired) : rows;
}

/** A lone quotation mark would swallow all that follows. */
function isOddlyQuoted(text: string): boolean {
  let quotes = 0;
  for (let at = text.indexOf('"'); at >= 0; at = text.indexOf('"', at + 1)) quotes++;
  return quotes % 2 === 1;
}

/** No row of a table is as long; of such a line the beginning is enough to see that it is none [characters] */
const MOST_LINE = 100_000;
const BEGINNING = 10_000;

const shortened = (block: string): string =>
  block.length > BLOCK + MOST_LINE
    ? block
        .split('\n')
        .map((line) => (line.length > MOST_LINE ? line.slice(0, BEGINNING) : line))
        .join('\n')
    : block;

/** Pieces of a text that end where lines end. */
export function* blocksOf(text: string): Generator<{ block: string; share: number }> {
  const size = Math.max(1, Math.min(BLOCK, Math.ceil(text.length / LEAST_BLOCKS)));
  for (let from = 0; from < text.length;) {
    const to = lineEnd(text, Math.min(text.length, from + size));
    yield { block: shortened(text.slice(from, to)), share: to / text.length };
    from = to;
  }
}

/** One past the end of the line that holds this place: behind a line feed, or a lone carriage return. */
function lineEnd(text: string, at: number): number {
  const feed = text.indexOf('\n', at - 1);
  if (feed >= 0) return feed + 1;
  const carriage = text.indexOf('\r', at - 1);
  return carriage >= 0 ? carriage + 1 : text.length;
}
