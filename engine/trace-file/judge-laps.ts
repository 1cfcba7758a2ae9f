/** Which laps a stint can be run on: whole ones without a hole, and the fastest of them unless a person says otherwise. */
import type { TraceLap } from '../circuit/understood.ts';
import type { CutLap } from './cut-laps.ts';
import { alongIn, drivenIn, durationOf, type MotionLog, type Span } from './motion-log.ts';
import { differences, quantile } from './statistics.ts';
import { tooSlow } from './sample-rate.ts';
import { together } from './time-line.ts';
import { AGREEMENT } from './time-units.ts';
import { grouped, quantity } from './words.ts';

/** Laps whose length is this near to the usual one are whole. */
const SAME_LENGTH = 0.03;
const LEAST_ROWS = 50;
/** Laps of circuits for cars, with room either side [m] */
export const LAP_M = { least: 500, most: 30_000 };
/** A hole longer than this may hide a stop; a slow log's own interval is no hole [s] */
const GAP_S = 1;
const GAP_INTERVALS = 1.5;

export interface JudgedLap extends CutLap, TraceLap {
  /** All that is in the way, one sentence each. */
  problems: string[];
}

/** The longest time between rows that is no hole [s] */
export const mostGap = ({ time_s }: MotionLog): number =>
  Math.max(
    GAP_S,
    GAP_INTERVALS *
      quantile(
        differences(time_s).filter((step) => step > 0),
        0.5,
      ),
  ) + 1e-6;

export function judgeLaps(log: MotionLog, laps: readonly CutLap[]): JudgedLap[] {
  const gap_s = mostGap(log);
  const judged = laps.map((lap) => ({
    ...lap,
    start_s: log.time_s[lap.from]!,
    duration_s: durationOf(log, lap),
    length_m: lengthOf(log, lap),
  }));
  const usual_m = usualLength(judged.map(({ length_m }) => length_m));
  const others = judged.length > 1;
  return judged.map((lap) => {
    const problems = [
      ...faultsIn(log, lap, laps),
      ...restartsIn(log, lap),
      ...(others ? [] : bareEnds(log, gap_s)),
      ...holesIn(log, lap, gap_s).map((hole) => (others ? `${hole}; choose another lap` : hole)),
      // Below nothing it is the speeds that are wrong, not the lap.
      ...(lap.length_m < 0 ? [] : sizeProblems(lap, usual_m, others)),
      ...disagreement(log, lap),
    ];
    // A hole makes any log slow: only what has none is judged by its rate.
    if (problems.length === 0) problems.push(...tooSlow(log, lap));
    return { ...lap, problem: problems[0] ?? '', problems };
  });
}

function lengthOf(log: MotionLog, lap: Span): number {
  const along = alongIn(log, lap);
  return Number.isNaN(along) ? drivenIn(log, lap) : along;
}

/** The length that most laps have; of two equally common the longer. */
function usualLength(lengths: readonly number[]): number {
  const alike = (usual: number): number[] =>
    lengths.filter((length) => Math.abs(length - usual) <= SAME_LENGTH * usual);
  const best = lengths.reduce<number[]>((group, length) => {
    const other = alike(length);
    const isBetter =
      other.length > group.length ||
      (other.length === group.length && Math.max(...other) > Math.max(...group));
    return isBetter ? other : group;
  }, []);
  return quantile(best, 0.5);
}

function faultsIn(
  { kept, faults, time_s }: MotionLog,
  { from, to }: CutLap,
  laps: readonly CutLap[],
): string[] {
  const first = from === laps[0]?.from ? 0 : kept[from]!;
  const last = to >= time_s.length ? Infinity : kept[to - 1]!;
  return together(faults.filter(({ at }) => at >= first && at < last));
}

/** A lap's number may change a few rows beside its time. */
const BESIDE_ROWS = 3;

function restartsIn({ restarts, time_s }: MotionLog, { from, to }: Span): string[] {
  return restarts
    .filter((at) => at > from + BESIDE_ROWS && at < to - BESIDE_ROWS)
    .map((at) => `the time starts again inside it, after ${quantity(time_s[at]!, 's', 1)}`);
}

function holesIn({ time_s }: MotionLog, { from, to }: Span, gap_s: number): string[] {
  const holes: string[] = [];
  for (let i = from + 1; i < to; i++) {
    const hole_s = time_s[i]! - time_s[i - 1]!;
    if (hole_s > gap_s)
      holes.push(`nothing for ${quantity(hole_s, 's', 1)} from ${quantity(time_s[i - 1]!, 's', 1)}`);
  }
  return holes;
}

/** A lap that is the whole file must not end before the file does. */
const bareEnds = ({ bare_s }: MotionLog, gap_s: number): string[] => [
  ...(bare_s.before > gap_s ? [`nothing for ${quantity(bare_s.before, 's', 1)} at its start`] : []),
  ...(bare_s.after > gap_s ? [`nothing for ${quantity(bare_s.after, 's', 1)} at its end`] : []),
];

function sizeProblems(
  { from, to, length_m }: Span & { length_m: number },
  usual_m: number,
  others: boolean,
): string[] {
  const problems: string[] = [];
  const length = quantity(length_m, 'm');
  if (to - from < LEAST_ROWS)
    problems.push(`expected at least ${LEAST_ROWS} rows in a lap, got ${to - from}`);
  if (length_m < LAP_M.least)
    problems.push(`expected a lap of at least ${quantity(LAP_M.least, 'm')}, got ${length}`);
  if (length_m > LAP_M.most) {
    problems.push(
      others
        ? `expected a lap of at most ${grouped(LAP_M.most / 1000)} km, got ${quantity(length_m / 1000, 'km', 1)}`
        : `it is ${quantity(length_m / 1000, 'km', 1)} long and nothing tells its laps apart; say at what times they start`,
    );
  }
  if (problems.length === 0 && Math.abs(length_m / usual_m - 1) > SAME_LENGTH) {
    problems.push(`not a whole lap: ${length} where whole ones have ${quantity(usual_m, 'm')}`);
  }
  return problems;
}

function disagreement(log: MotionLog, lap: Span): string[] {
  const along_m = alongIn(log, lap);
  if (!log.isTimed || Number.isNaN(along_m)) return [];
  const driven_m = drivenIn(log, lap);
  if (Math.abs(driven_m / along_m - 1) <= AGREEMENT) return [];
  return [
    `speed over time makes ${quantity(driven_m, 'm')} where the distance says ${quantity(along_m, 'm')}; check their units, or leave the distance out`,
  ];
}

/** Index of the fastest lap without a problem. One that is not closed lacks a row's time: that is no merit. */
export function fastest(laps: readonly JudgedLap[]): number | null {
  const time = ({ duration_s, from, to, isClosed }: JudgedLap): number =>
    isClosed ? duration_s : (duration_s * (to - from)) / (to - from - 1);
  return laps.reduce<number | null>(
    (best, lap, i) => (lap.problem === '' && (best === null || time(lap) < time(laps[best]!)) ? i : best),
    null,
  );
}
