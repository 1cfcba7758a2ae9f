/** How a logger's file was understood: what the reader found, what a person may correct, and what is still open. */
import type { TraceColumns } from './trace.ts';

export type Delimiter = ',' | ';' | '\t' | '|' | ' ';
export type Decimal = '.' | ',';

export type TraceRole =
  | 'time'
  | 'distance'
  | 'speed'
  | 'lap'
  | 'slope'
  | 'altitude'
  | 'acceleration'
  | 'front brake pressure'
  | 'rear brake pressure';

/** What laps are cut by: a column, the distance that returns to the start, times a person gave, or nothing. */
export type LapsBy = 'column' | 'distance' | 'times' | 'none';

/** What a person said about a file. Whatever is left out is guessed. */
export interface TraceChoices {
  delimiter?: Delimiter;
  decimal?: Decimal;
  /** By index of the column; null: not used. */
  roles?: Readonly<Record<number, TraceRole | null>>;
  units?: Readonly<Record<number, string>>;
  lapsBy?: LapsBy;
  /** Starts of laps since the first row, for `lapsBy: 'times'` [s] */
  lapStarts_s?: readonly number[];
  /** Index into the laps of the reading. */
  lap?: number;
}

export interface TraceColumn {
  name: string;
  role: TraceRole | null;
  /** As understood; empty where none is needed, and where the stated one is unknown: then it is to be chosen. */
  unit: string;
  /** Units that its role allows, for a person to choose from. */
  units: readonly string[];
  /** Why it is not the stated unit, in a sentence; empty where it is. */
  unitReason: string;
  /** At most 96 values over the whole file in the column's own unit; NaN where there is nothing. */
  thumbnail: Float64Array;
  low: number;
  high: number;
}

export interface TraceLap {
  /** The number in the file's column, or the order of the lap from 1. */
  lap: number;
  start_s: number;
  duration_s: number;
  length_m: number;
  /** Why the stint cannot be run on this lap, in a sentence; empty where it can. */
  problem: string;
}

/** One plain question where two readings of the file fit. */
export interface TraceQuestion {
  text: string;
  answers: readonly { text: string; choices: TraceChoices }[];
}

export interface UnderstoodTrace {
  delimiter: Delimiter;
  decimal: Decimal;
  columns: readonly TraceColumn[];
  /** The first rows of numbers as understood: numbers printed with a decimal point, NaN as an empty cell. */
  firstRows: readonly (readonly string[])[];
  /** Rows of numbers in the file. */
  rows: number;
  /** From the first row that is used to the last, holes included; NaN where no lap can be sought [s] */
  duration_s: number;
  lapsBy: LapsBy;
  laps: readonly TraceLap[];
  /** Index of the lap that is used: chosen by the person, or the fastest whole one; null where none can be. */
  lap: number | null;
  meanInterval_s: number;
  /** What was left out or set right, one sentence each. */
  mended: readonly string[];
  question: TraceQuestion | null;
  /** The same for files with the same header: corrections are remembered by it. */
  fingerprint: string;
}

/**
 * A trace can be taken when there are columns; problems say what is in the way, one sentence each with row and column.
 * What was understood comes along even then, so that a person can correct it; null where nothing was.
 */
export interface TraceReading {
  problems: readonly string[];
  understood: UnderstoodTrace | null;
  /** One lap; null while there are problems or a question is open. */
  columns: TraceColumns | null;
}
