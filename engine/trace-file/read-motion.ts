/** From columns of numbers to one log in SI: units, order of the rows, laps' ends, and what is in the way. */
import type { TraceRole } from '../circuit/understood.ts';
import { kmhFromMps, mpsFromKmh } from '../units.ts';
import { distanceAlone, distanceLine, farthestOf, isReset, type DistanceLine } from './distance-line.ts';
import { timeAlong, type MotionLog } from './motion-log.ts';
import type { Columns } from './read-columns.ts';
import type { Fault, TimeLine } from './time-line.ts';
import { timeLine } from './time-line.ts';
import type { MotionUnits } from './time-units.ts';
import { sizeOf } from './units.ts';
import { count, plain, quantity, Tally } from './words.ts';

const MOST_KMH = 400;
/** A sensor at rest may show a little less than nothing [km/h] */
const REST_KMH = -5;
/** From faster than this a car does not stand in the next row: a nothing there is a drop-out, and no hard stop [km/h] */
const DRIVING_KMH = 100;

export interface MotionSources {
  columns: Columns;
  names: readonly string[];
  /** Index of the column of each role. */
  index: Partial<Record<TraceRole, number>>;
  units: MotionUnits;
}

export interface ReadMotion {
  log: MotionLog;
  /** Where the distance returns, as indices into the log's rows. */
  resets: number[];
  mended: string[];
}

export function readMotion(sources: MotionSources): ReadMotion {
  const { columns, names, index, units } = sources;
  const speedAt = index.speed!;
  const { speed_mps, faults, mended } = checkedSpeed(sources);
  const inSI = (role: 'time' | 'distance'): Float64Array | undefined => {
    const at = index[role];
    if (at === undefined) return undefined;
    const size = columns.kinds[at] === 'number' ? sizeOf(role, units.unit[role]!) : 1;
    return size === 1 ? columns.values[at]! : columns.values[at]!.map((value) => value * size);
  };
  const seconds = inSI('time');
  const metres = inSI('distance');
  const isFilled = (i: number): boolean => !Number.isNaN(speed_mps[i]!);
  const { line, distance } = linesOf(sources, { seconds, metres, speed_mps, isFilled });
  const speeds = Float64Array.from(line.kept, (i) => speed_mps[i]!);
  const spoilt = [speedAt, index.time ?? index.distance!].flatMap((at) => badCells(columns, at, names[at]!));
  return {
    log: {
      kept: line.kept,
      time_s: line.time_s ?? timeAlong(distance!.distance_m, speeds),
      isTimed: line.time_s !== null,
      speed_mps: speeds,
      distance_m: distance?.distance_m ?? null,
      faults: [...spoilt, ...faults, ...line.faults, ...(distance?.faults ?? [])].sort((a, b) => a.at - b.at),
      restarts: line.restarts,
      bare_s: bareEnds(line.kept, seconds ?? metres!, seconds ? null : speeds),
    },
    resets: distance?.resets ?? [],
    mended: [...mended, ...line.mended, ...(distance?.mended ?? [])],
  };
}

/** Rows at either end that have a time or a distance but no speed. A distance is as long as the speed beside it says [s] */
function bareEnds(kept: Uint32Array, over: Float64Array, speeds: Float64Array | null): MotionLog['bare_s'] {
  const [first, last] = [kept[0] ?? 0, kept.at(-1) ?? 0];
  const start = over.findIndex((value) => !Number.isNaN(value));
  const end = over.findLastIndex((value) => !Number.isNaN(value));
  const along = (from: number, to: number, v = 0): number =>
    Math.max(0, (over[to]! - over[from]!) / (speeds ? Math.max(1, v) : 1)) || 0;
  return { before: along(start, first, speeds?.[0]), after: along(last, end, speeds?.at(-1)) };
}

interface InSI {
  seconds: Float64Array | undefined;
  metres: Float64Array | undefined;
  speed_mps: Float64Array;
  isFilled: (i: number) => boolean;
}

function linesOf(
  { columns, names, index, units }: MotionSources,
  { seconds, metres, speed_mps, isFilled }: InSI,
): { line: TimeLine; distance: DistanceLine | null } {
  const { rowNumbers } = columns;
  const along = metres && { metres, name: names[index.distance!]! };
  if (!seconds) return distanceAlone(along!, rowNumbers, isFilled);
  const lapNumbers = index.lap === undefined ? undefined : columns.values[index.lap];
  const farthest = metres ? farthestOf(metres) : NaN;
  const startsAnew = (i: number, before: number): boolean =>
    (lapNumbers !== undefined && lapNumbers[i] !== lapNumbers[before]) ||
    (metres !== undefined && isReset(metres, farthest, i, before));
  const at = index.time!;
  const unit_s = columns.kinds[at] === 'number' ? sizeOf('time', units.unit.time!) : 0;
  const line = timeLine({ seconds, name: names[at]!, unit_s }, rowNumbers, isFilled, startsAnew);
  return { line, distance: along ? distanceLine(along, line, speed_mps, rowNumbers) : null };
}

/** Speeds in SI; what no car drives is a fault, a little less than nothing is nothing. */
function checkedSpeed({ columns, names, index, units }: MotionSources) {
  const at = index.speed!;
  const unit = units.unit.speed!;
  const size = sizeOf('speed', unit);
  const most_mps = mpsFromKmh(MOST_KMH);
  const rest_mps = mpsFromKmh(REST_KMH);
  const faults: Fault[] = [];
  const held = new Tally();
  const blank = new Tally();
  const dropped = new Tally();
  const driving_mps = mpsFromKmh(DRIVING_KMH);
  let last_mps = 0;
  const bad = new Set(columns.bad[at]!.map((cell) => cell.at));
  const speed_mps = columns.values[at]!.map((value, i) => {
    const v = value * size;
    if (Number.isNaN(v)) {
      if (!bad.has(i)) blank.note(columns.rowNumbers[i]!);
    } else if (v <= 0 && v >= rest_mps && last_mps > driving_mps) {
      dropped.note(columns.rowNumbers[i]!);
      return NaN;
    } else if (v < rest_mps || v > most_mps) {
      const got =
        unit === 'km/h'
          ? `${plain(value)} km/h`
          : `${plain(value)} ${unit}, ${quantity(kmhFromMps(v), 'km/h')}`;
      faults.push({
        at: i,
        kind: v < 0 ? 'below nothing' : 'too fast',
        text: `row ${columns.rowNumbers[i]}, column ${names[at]}: expected 0 to ${MOST_KMH} km/h, got ${got}${units.chosenTooFast}`,
      });
    } else if (v < 0) {
      held.note(columns.rowNumbers[i]!);
      last_mps = 0;
      return 0;
    } else last_mps = v;
    return v;
  });
  const mended = [
    blank.sentence((n) => `${count(n, 'row')} without a speed left out`),
    dropped.sentence((n) => `${count(n, 'row')} without a speed while driving, 0 or less, left out`),
    held.sentence((n) => `${count(n, 'speed')} just below nothing taken as nothing`),
  ].filter((sentence) => sentence !== '');
  return { speed_mps, faults, mended };
}

export function badCells({ bad, rowNumbers }: Columns, at: number, name: string): Fault[] {
  return bad[at]!.map((cell) => ({
    at: cell.at,
    kind: `no number in ${name}`,
    text: `row ${rowNumbers[cell.at]}, column ${name}: expected a number, got '${cell.text}'`,
  }));
}
