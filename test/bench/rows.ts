/** A line of the benchmark's table: what was measured, how often, and between what it lay. */

/** How far an answer is from the committed reference: a speed without it does not count. */
export interface ErrorOfRun {
  /** Largest error of a lap's highest face [K] */
  peak_K: number;
  /** Largest error of any column of the trace [K] */
  trace_K: number;
}

export interface Row {
  name: string;
  /** `ms`, `K`, `MB`; a ratio is in times, `x`. */
  unit: string;
  n: number;
  median: number;
  /** 1st and 99th percentile; of a few values the smallest and the largest. */
  low: number;
  high: number;
  /** What is aimed at, and the least or most that is good enough, in words. */
  wanted?: string;
  error?: ErrorOfRun;
}

export interface Told {
  unit: string;
  wanted?: string;
  error?: ErrorOfRun;
}

/** A measure that cannot be taken here, for want of a program; the rest go on. */
export class Missing extends Error {}

export function rowOf(name: string, values: readonly number[], told: Told): Row {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))] ?? NaN;
  return { name, n: values.length, median: at(0.5), low: at(0.01), high: at(0.99), ...told };
}

/** How often each value of one goes into the value beside it: both were taken at the same moment. */
export const ratios = (of: readonly number[], over: readonly number[]): number[] =>
  of.map((value, i) => value / over[i]!);

const HEAD = ['measure', 'median', '1 %', '99 %', '', 'n', 'peaks', 'trace', 'wanted'];

/** The table; errors are in kelvin. */
export function tableOf(rows: readonly Row[]): string {
  const cells = [HEAD, ...rows.map(cellsOf)];
  const widths = HEAD.map((_, i) => Math.max(...cells.map((line) => line[i]!.length)));
  const isText = (i: number): boolean => i === 0 || i === 4 || i === HEAD.length - 1;
  return cells
    .map((line) =>
      line
        .map((cell, i) => (isText(i) ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!)))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

const cellsOf = ({ name, unit, n, median, low, high, wanted = '', error }: Row): string[] => [
  name,
  ...[median, low, high].map(digits),
  unit,
  String(n),
  error ? error.peak_K.toFixed(2) : '',
  error ? error.trace_K.toFixed(2) : '',
  wanted,
];

/** Three digits, and all of those before the point. */
function digits(value: number): string {
  if (value === 0 || !Number.isFinite(value)) return String(value);
  if (Math.abs(value) < 1e-3) return value.toExponential(1);
  const places = 2 - Math.floor(Math.log10(Math.abs(value)));
  return value.toFixed(Math.max(places, 0));
}
