/** Where laps start: by a column, by the distance that returns, by times a person gave, or nowhere. */
import type { LapsBy } from '../circuit/understood.ts';
import type { MotionLog, Span } from './motion-log.ts';
import { rangeOf } from './statistics.ts';
import { count } from './words.ts';

export interface CutLap extends Span {
  lap: number;
  /** Its last row is the next one's first. */
  isClosed: boolean;
}

export interface LapMarks {
  lapsBy: LapsBy;
  laps: CutLap[];
  mended: string[];
  /** Why the way that a person chose cuts nothing. */
  problems: string[];
}

export interface LapSources {
  /** Numbers of laps by row of numbers, where a column has them. */
  lapNumbers: Float64Array | null;
  /** Where the distance returns. Indices into the log's rows. */
  resets: readonly number[];
  /** Where another column, a lap's time or distance, returns to nothing. */
  returns: readonly number[];
  lapsBy?: LapsBy | undefined;
  lapStarts_s?: readonly number[] | undefined;
}

const LEAST_ROWS = 3;
/** A marker is set for less than this share of the rows; a lap's number stays. */
const MARKER_SHARE = 0.05;

export function cutLaps(log: MotionLog, sources: LapSources): LapMarks {
  const { lapsBy, laps } = piecesOf(log, sources);
  const whole = laps.filter(({ from, to }) => to - from >= LEAST_ROWS);
  const scraps = laps.length - whole.length;
  return {
    lapsBy,
    laps: whole,
    problems: cutsNothing(log, sources),
    mended: scraps > 0 ? [`${count(scraps, 'piece')} of under ${LEAST_ROWS} rows left out`] : [],
  };
}

/** A choice that the file has nothing for is said, not taken for one lap. */
function cutsNothing(log: MotionLog, sources: LapSources): string[] {
  const { lapsBy, lapNumbers, resets } = sources;
  if (lapsBy === 'distance' && resets.length === 0)
    return ['laps: the distance never returns to the start and cuts none; cut them another way'];
  if (lapsBy === 'column' && !lapNumbers && startsIn(log, sources).length === 0)
    return ['laps: no column tells them apart; cut them another way'];
  return [];
}

function piecesOf(log: MotionLog, sources: LapSources): { lapsBy: LapsBy; laps: CutLap[] } {
  const { lapNumbers, resets, lapsBy, lapStarts_s } = sources;
  const way = lapsBy ?? wayOf(log, sources);
  switch (way) {
    case 'column':
      return {
        lapsBy: way,
        laps: isTelling(log, sources) ? byNumbers(log, lapNumbers!) : inOrder(log, startsIn(log, sources)),
      };
    case 'distance':
      return { lapsBy: way, laps: inOrder(log, resets) };
    case 'times':
      return {
        lapsBy: way,
        laps: inOrder(
          log,
          (lapStarts_s ?? []).map((t) => rowAt(log, t)),
        ),
      };
    case 'none':
      return { lapsBy: way, laps: inOrder(log, []) };
  }
}

function varies(numbers: Float64Array): boolean {
  const { low, high } = rangeOf(numbers);
  return low < high;
}

/** Lap numbers that never change tell less than a distance that returns. */
function wayOf(log: MotionLog, sources: LapSources): LapsBy {
  const { lapNumbers, resets } = sources;
  if (lapNumbers && varies(lapNumbers)) return 'column';
  if (resets.length > 0) return 'distance';
  return lapNumbers || startsIn(log, sources).length > 0 ? 'column' : 'none';
}

const startsIn = ({ restarts }: MotionLog, { returns }: LapSources): readonly number[] =>
  restarts.length > 0 ? restarts : returns;

const isTelling = (log: MotionLog, sources: LapSources): boolean => {
  const { lapNumbers } = sources;
  return lapNumbers !== null && (varies(lapNumbers) || startsIn(log, sources).length === 0);
};

function rowAt({ time_s }: MotionLog, start_s: number): number {
  const row = time_s.findIndex((t) => t >= start_s);
  return row < 0 ? time_s.length : row;
}

/** The row that ends a lap is the next one's first: a lap closes where the next begins, unless the log starts anew there. */
function inOrder(log: MotionLog, starts: readonly number[]): CutLap[] {
  const n = log.kept.length;
  const bounds = [...new Set([0, ...starts, n])].filter((at) => at <= n).sort((a, b) => a - b);
  return bounds.slice(1).map((end, i) => {
    const isClosed = end < n && !log.restarts.includes(end);
    return { lap: i + 1, from: bounds[i]!, to: isClosed ? end + 1 : end, isClosed };
  });
}

function byNumbers(log: MotionLog, lapNumbers: Float64Array): CutLap[] {
  const numbers = Float64Array.from(log.kept, (row) => lapNumbers[row]!);
  for (let i = 1; i < numbers.length; i++) if (Number.isNaN(numbers[i]!)) numbers[i] = numbers[i - 1]!;
  const changes: number[] = [];
  for (let i = 1; i < numbers.length; i++) {
    if (numbers[i] !== numbers[i - 1] && !Number.isNaN(numbers[i]! + numbers[i - 1]!)) changes.push(i);
  }
  const first = numbers.filter((number) => number === numbers[0]).length;
  const rest = first * 2 > numbers.length ? numbers[0] : numbers[changes[0] ?? 0];
  const set = numbers.filter((number) => number !== rest).length;
  const isMarker = new Set(numbers).size === 2 && changes.length > 1 && set < MARKER_SHARE * numbers.length;
  if (isMarker)
    return inOrder(
      log,
      changes.filter((at) => numbers[at] !== rest),
    );
  return inOrder(log, changes).map((lap) => ({ ...lap, lap: numbers[lap.from]! }));
}
