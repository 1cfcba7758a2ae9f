import { headerOf } from './trace-header.ts';
import type { TraceColumn, UsedColumn } from './trace-header.ts';
import { problemsOf } from './trace-checks.ts';
import { extentOf, fastestLap, lapsOf, sliceTrace } from './trace-laps.ts';
import { isBlank, numberOf, tableOf } from './trace-table.ts';
import type { Decimal, Delimiter, TraceTable } from './trace-table.ts';
import type { TraceColumns } from './trace.ts';

/** How a file was read, for a person to check. */
export interface UnderstoodTrace {
  delimiter: Delimiter;
  decimal: Decimal;
  columns: TraceColumn[];
  /** rows of the lap that is used */
  rows: number;
  duration_s: number;
  length_m: number;
  meanInterval_s: number;
  /** the lap that is used, of how many; null without a column of laps */
  lap: { number: number; of: number } | null;
  /** the first rows of numbers, cells as they stand in the file */
  firstRows: string[][];
}

export type TraceReading =
  { ok: true; understood: UnderstoodTrace; columns: TraceColumns } | { ok: false; problems: string[] };

/** More problems than a person reads are counted, not listed. */
const MOST_PROBLEMS = 20;

const ROWS_SHOWN = 12;

const failed = (problems: string[]): TraceReading => {
  const rest = problems.length - MOST_PROBLEMS;
  const listed = problems.slice(0, MOST_PROBLEMS);
  return { ok: false, problems: rest > 0 ? [...listed, `and ${rest} more`] : listed };
};

/** Reads a logger's text file into one lap of speed in SI units, or says everything that is wrong with it. */
export function readTrace(text: string): TraceReading {
  const table = tableOf(text);
  if (!table) return failed(['file: expected rows of numbers, cells parted by comma, semicolon or tab']);
  const { columns, used, problems } = headerOf(table);
  if (problems.length > 0) return failed(problems);
  const numbers = numbersOf(table, used);
  if (numbers.problems.length > 0) return failed(numbers.problems);

  const whole = traceOf(numbers.values);
  const lapNumbers = numbers.values.get('lap');
  const laps = lapNumbers ? lapsOf(whole, lapNumbers) : [];
  const chosen = fastestLap(laps);
  if (lapNumbers && !chosen) return failed(['laps: expected at least one complete lap']);
  const from = chosen?.from ?? 0;
  const to = chosen?.to ?? numbers.rows.length;
  const trace = sliceTrace(whole, from, to);
  const wrong = problemsOf(trace, numbers.rows.slice(from, to), used);
  if (wrong.length > 0) return failed(wrong);

  const extent = extentOf(trace);
  const understood: UnderstoodTrace = {
    delimiter: table.delimiter,
    decimal: table.decimal,
    columns,
    rows: to - from,
    ...extent,
    meanInterval_s: extent.duration_s / (to - from - 1),
    lap: chosen ? { number: chosen.lap, of: laps.length } : null,
    firstRows: table.rows.slice(table.firstData, table.firstData + ROWS_SHOWN),
  };
  return { ok: true, understood, columns: trace };
}

interface Numbers {
  values: Map<UsedColumn['role'], Float64Array>;
  /** the file's row number of each row, the first line being 1 */
  rows: number[];
  problems: string[];
}

/** The used columns in SI, and each cell that is not a number. */
function numbersOf({ rows, firstData, decimal }: TraceTable, used: readonly UsedColumn[]): Numbers {
  const indices = rows.map((_, i) => i).filter((i) => i >= firstData && !isBlank(rows[i]!));
  const problems: string[] = [];
  const values = new Map(
    used.map(({ role, index, factor, name }) => {
      const column = Float64Array.from(indices, (i) => {
        const cell = rows[i]![index];
        const value = numberOf(cell, decimal);
        if (Number.isNaN(value)) {
          problems.push(`row ${i + 1}, column ${name}: expected a number, got '${cell ?? ''}'`);
        }
        return value * factor;
      });
      return [role, column] as const;
    }),
  );
  return { values, rows: indices.map((i) => i + 1), problems };
}

function traceOf(values: Numbers['values']): TraceColumns {
  const trace: TraceColumns = { speed_mps: values.get('speed')! };
  const keys = { time: 'time_s', distance: 'distance_m', slope: 'slope', altitude: 'height_m' } as const;
  for (const role of ['time', 'distance', 'slope', 'altitude'] as const) {
    const column = values.get(role);
    if (column) trace[keys[role]] = column;
  }
  return trace;
}
