import { readTrace as readOneLap } from '../circuit/read-trace.ts';
import type { TraceChoices, TraceReading } from '../circuit/understood.ts';

/** Reads a logger's text file into one lap of speed in SI units, or says everything that is wrong with it. */
export function readTrace(
  text: string,
  _choices: TraceChoices = {},
  progress: (share: number) => void = () => undefined,
): TraceReading {
  const reading = readOneLap(text);
  progress(1);
  if (!reading.ok) return { problems: reading.problems, understood: null, columns: null };
  const { understood, columns } = reading;
  const { duration_s, length_m, lap } = understood;
  return {
    problems: [],
    columns,
    understood: {
      delimiter: understood.delimiter,
      decimal: understood.decimal,
      columns: understood.columns.map(({ name, role, unit }) => ({
        name,
        role,
        unit,
        units: unit ? [unit] : [],
        unitReason: '',
        thumbnail: new Float64Array(0),
        low: NaN,
        high: NaN,
      })),
      firstRows: understood.firstRows,
      rows: understood.rows,
      lapsBy: lap ? 'column' : 'none',
      laps: [{ lap: lap?.number ?? 1, start_s: 0, duration_s, length_m, problem: '' }],
      lap: 0,
      meanInterval_s: understood.meanInterval_s,
      mended: [],
      question: null,
      fingerprint: understood.columns.map(({ name }) => name).join('|'),
    },
  };
}
