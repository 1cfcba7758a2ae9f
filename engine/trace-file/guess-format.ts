/** Delimiter and decimal mark are guessed together: a decimal comma is what the other readings trip over. */
import type { Decimal, Delimiter, TraceChoices, TraceQuestion } from '../circuit/understood.ts';
import { isValue } from './cell.ts';
import { cutRows, type Format } from './cut-rows.ts';
import type { Sample } from './sample.ts';

/** Of readings that fit equally well the first is taken. */
const READINGS: readonly [Delimiter, Decimal][] = [
  [',', '.'],
  [',', ','],
  [';', '.'],
  ['\t', '.'],
  ['|', '.'],
  [';', ','],
  ['\t', ','],
  ['|', ','],
  [' ', '.'],
  [' ', ','],
];

/** A reading must be better than one before it by this share of the characters. */
const CLEARLY = 0.01;

/** Rows of measurements have at least a time and a speed. */
const LEAST_CELLS = 2;

const DIGITS = /^\s*\d+\s*$/;

export interface GuessedFormat extends Format {
  question: TraceQuestion | null;
}

interface Fit {
  format: Format;
  /** Share of all characters that stand in values of rows of the usual width. */
  share: number;
}

const isLong = (row: readonly string[], decimal: Decimal): boolean =>
  row.filter((cell) => cell.trim() !== '' && isValue(cell, decimal)).length >= LEAST_CELLS;

const widthOf = (row: readonly string[]): number => (row.at(-1)?.trim() === '' ? row.length - 1 : row.length);

/** Width of most rows of measurements; 0 where there are none. */
export function usualWidth(rows: readonly string[][], decimal: Decimal): number {
  const counts = new Map<number, number>();
  for (const row of rows) if (isLong(row, decimal)) counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
  return [...counts].reduce((best, entry) => (entry[1] > best[1] ? entry : best), [0, 0])[0];
}

function fitOf(format: Format, text: string): Fit {
  const rows = cutRows(text, format);
  const width = usualWidth(rows, format.decimal);
  let values = 0;
  let all = 0;
  for (const row of rows) {
    for (const cell of row) {
      const size = cell.trim().length + 1;
      all += size;
      if (row.length === width && isValue(cell, format.decimal)) values += size;
    }
  }
  return { format, share: all > 0 && width >= LEAST_CELLS ? values / all : 0 };
}

/** The format of a file, with one question where a comma may do both; nothing where no reading finds measurements. */
export function guessFormat({ head, pieces }: Sample, choices: TraceChoices): GuessedFormat | undefined {
  const text = [...head, ...pieces].join('\n');
  const rows = cutRows(text, { delimiter: ',', decimal: ',', pairs: false });
  const pairs = !rows.some((row) => row.some((cell) => cell.includes(',')));
  const fits = READINGS.filter(
    ([delimiter, decimal]) =>
      delimiter === (choices.delimiter ?? delimiter) && decimal === (choices.decimal ?? decimal),
  ).map(([delimiter, decimal]) =>
    fitOf({ delimiter, decimal, pairs: delimiter === ',' && decimal === ',' && pairs }, text),
  );
  const best = fits.reduce<Fit | undefined>((a, b) => (a && b.share < a.share + CLEARLY ? a : b), undefined);
  if (!best || best.share === 0) return undefined;
  const { format } = best;
  const isOpen = format.delimiter === ',' && format.decimal === '.' && choices.decimal === undefined;
  const asked = isOpen ? pairsIn(cutRows(head.join('\n'), format), choices) : null;
  return asked === 'pairs'
    ? { ...format, decimal: ',', pairs: true, question: null }
    : { ...format, question: asked };
}

/** Whole numbers in an even count of cells may be half as many with decimals. The names above them decide, if there are any. */
function pairsIn(rows: readonly string[][], choices: TraceChoices): 'pairs' | TraceQuestion | null {
  const width = usualWidth(rows, '.');
  const first = rows.findIndex((row) => row.length === width && isLong(row, '.'));
  const row = rows[first];
  if (!row) return null;
  const cells = widthOf(row);
  if (cells % 2 === 1 || cells < 2 * LEAST_CELLS) return null;
  const data = rows.slice(first).filter((other) => other.length === width && isLong(other, '.'));
  const fit = data.every((other) =>
    other.slice(0, cells).every((cell, i) => (i % 2 === 0 ? isWhole(cell) : DIGITS.test(cell))),
  );
  if (!fit) return null;
  const widths = rows.slice(0, first).map(widthOf);
  if (widths.includes(cells)) return null;
  if (widths.includes(cells / 2)) return 'pairs';
  const telling = data.find(([, second = '']) => Number(second) > 0) ?? row;
  const [whole = '', part = ''] = telling.map((cell) => cell.trim());
  return {
    text: `Is ${whole},${part} one number or two?`,
    answers: [
      { text: `One: ${whole}.${part}`, choices: { ...choices, delimiter: ',', decimal: ',' } },
      { text: `Two: ${whole} and ${part}`, choices: { ...choices, delimiter: ',', decimal: '.' } },
    ],
  };
}

const isWhole = (cell: string): boolean => /^\s*[+-]?\d+\s*$/.test(cell);
