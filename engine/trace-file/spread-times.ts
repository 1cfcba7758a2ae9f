/** A clock that is coarser than the rows: equal times are spread evenly up to the next one. */
import { differences, quantile } from './statistics.ts';
import { plain } from './words.ts';

/** Times must stand for at least this many rows, nearly everywhere. */
const LEAST_RUN = 2;
const NEARLY_ALL = 0.8;
/** A run may be this much shorter or longer than the usual one, or by one row. */
const UNEVEN = 0.2;
/** Of runs of two, some spoilt [share of rows] */
const LEAST_SAME = 0.3;
/** Rows that come twice have the same speed, too: where more than this share does, nothing is spread. */
const SAME_SPEED = 0.9;

interface Run {
  /** Indices of its rows. */
  rows: number[];
  time: number;
}

/**
 * Times of a clock that shows whole seconds in a log of ten rows a second: row k of n at the time's k-th part. Null where the
 * clock is as fine as the rows, where its steps are uneven, or where the rows only come twice.
 */
export function spreadTimes(
  times: Float64Array,
  speeds: Float64Array,
): { times: Float64Array; rows: number; step: number } | null {
  if (!repeats(times)) return null;
  const runs = runsOf(times, speeds);
  if (runs.length < 2 * LEAST_RUN + 1) return null;
  const inner = runs.slice(1, -1);
  const usual = quantile(
    inner.map(({ rows }) => rows.length),
    0.5,
  );
  const isUsual = ({ rows }: Run): boolean => Math.abs(rows.length - usual) <= Math.max(1, UNEVEN * usual);
  const even = inner.filter(isUsual).length;
  if (usual < LEAST_RUN || even < NEARLY_ALL * inner.length) return null;
  const same = inner.filter(({ rows }) => rows.every((i) => speeds[i] === speeds[rows[0]!])).length;
  if (same > SAME_SPEED * inner.length) return null;
  const step = quantile(
    differences(Float64Array.from(runs, ({ time }) => time)).filter((d) => d > 0),
    0.5,
  );
  const spread = times.slice();
  runs.forEach(({ rows, time }, r) => {
    const next = (runs[r + 1]?.time ?? NaN) - time;
    const isEnd = r === 0 || r === runs.length - 1;
    const n = isEnd ? Math.max(usual, rows.length) : rows.length;
    const part = (next > 0 && next < 2 * step ? next : step) / n;
    const first = r === 0 ? n - rows.length : 0;
    rows.forEach((i, k) => (spread[i] = time + (first + k) * part));
  });
  return { times: spread, rows: usual, step };
}

/** Whether enough rows have the time of the row before; most files are done with here. */
function repeats(times: Float64Array): boolean {
  let [same, filled] = [0, 0];
  for (let i = 1; i < times.length; i++) {
    if (times[i] === times[i - 1]) same += 1;
    if (!Number.isNaN(times[i]!)) filled += 1;
  }
  return same > LEAST_SAME * filled;
}

function runsOf(times: Float64Array, speeds: Float64Array): Run[] {
  const runs: Run[] = [];
  for (let i = 0; i < times.length; i++) {
    if (Number.isNaN(times[i]! + speeds[i]!)) continue;
    const last = runs.at(-1);
    if (last && last.time === times[i]) last.rows.push(i);
    else runs.push({ rows: [i], time: times[i]! });
  }
  return runs;
}

export const spreadText = (name: string, rows: number): string =>
  `${name} stands for ${plain(rows)} rows at a time: they are spread evenly up to its next value`;
