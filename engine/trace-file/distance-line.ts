/** Distance along the whole file: laps that start again at nothing are put end to end. */
import type { Fault, TimeLine } from './time-line.ts';
import { rangeOf } from './statistics.ts';
import { count, quantity, Tally } from './words.ts';

export interface DistanceLine {
  /** Rising or level over the rows that are used; NaN where the file has none [m] */
  distance_m: Float64Array;
  /** Indices into the rows that are used at which a new lap starts. */
  resets: number[];
  faults: Fault[];
  mended: string[];
}

export interface DistanceColumn {
  metres: Float64Array;
  name: string;
}

/** A receiver that stands may wander back by this [m] */
const WANDERS_M = 5;
/** A lap starts within this share of the farthest, and after at least as much of a way back. */
const NEAR_START = 0.05;
const WAY_BACK = 0.5;

/** Whether a distance falls back to the start from one row to the other. */
export function isReset(metres: Float64Array, farthest: number, i: number, before: number): boolean {
  const [from, to] = [metres[before]!, metres[i]!];
  return (
    to < NEAR_START * farthest &&
    from - to > WAY_BACK * from &&
    from > NEAR_START * farthest &&
    from - to > WANDERS_M
  );
}

export const farthestOf = (metres: Float64Array): number => rangeOf(metres).high;

/** Beside a time: where it wanders back it is held, where laps start it goes on. */
export function distanceLine(
  { metres, name }: DistanceColumn,
  { kept, time_s }: TimeLine,
  speed_mps: Float64Array,
  rowNumbers: Uint32Array,
): DistanceLine {
  const farthest = farthestOf(metres);
  const distance_m = new Float64Array(kept.length).fill(NaN);
  const resets: number[] = [];
  const faults: Fault[] = [];
  const held = new Tally();
  let last = -1; // index of the last row with a distance
  let offset = 0;
  for (let k = 0; k < kept.length; k++) {
    const i = kept[k]!;
    const d = metres[i]!;
    if (Number.isNaN(d)) continue;
    if (last >= 0) {
      const back = distance_m[last]! - (d + offset);
      if (back > 0) {
        if (isReset(metres, farthest, i, kept[last]!)) {
          resets.push(k);
          offset = distance_m[last]! + speed_mps[i]! * (time_s![k]! - time_s![last]!) - d;
        } else if (back <= WANDERS_M) {
          held.note(rowNumbers[i]!);
          distance_m[k] = distance_m[last]!;
          last = k;
          continue;
        } else {
          const text = backText(rowNumbers[i]!, name, metres[kept[last]!]!, d);
          faults.push({ at: i, text, kind: 'distance back' });
          offset = distance_m[last]! - d;
        }
      }
    }
    distance_m[k] = d + offset;
    last = k;
  }
  const mended = held.sentence(
    (n) => `${name} goes back by less than ${quantity(WANDERS_M, 'm')} in ${count(n, 'row')}: held`,
  );
  return { distance_m, resets, faults, mended: mended ? [mended] : [] };
}

const backText = (row: number, name: string, from: number, to: number): string =>
  `row ${row}, column ${name}: it jumps back from ${quantity(from, 'm')} to ${quantity(to, 'm')}`;

/** Instead of a time: rows that do not go on are left out. */
export function distanceAlone(
  { metres, name }: DistanceColumn,
  rowNumbers: Uint32Array,
  isFilled: (i: number) => boolean,
): { line: TimeLine; distance: DistanceLine } {
  const farthest = farthestOf(metres);
  const kept = new Uint32Array(metres.length);
  const distance_m = new Float64Array(metres.length);
  const resets: number[] = [];
  const faults: Fault[] = [];
  const left = { twice: new Tally(), late: new Tally(), blank: new Tally() };
  let n = 0;
  let offset = 0;
  for (let i = 0; i < metres.length; i++) {
    const d = metres[i]!;
    if (!isFilled(i)) continue;
    if (Number.isNaN(d)) {
      left.blank.note(rowNumbers[i]!);
      continue;
    }
    if (n > 0) {
      const before = kept[n - 1]!;
      const on = d + offset - distance_m[n - 1]!;
      if (on === 0) {
        left.twice.note(rowNumbers[i]!);
        continue;
      }
      if (on < 0) {
        const isNew = isReset(metres, farthest, i, before);
        if (!isNew && on >= -WANDERS_M) {
          left.late.note(rowNumbers[i]!);
          continue;
        }
        if (isNew) resets.push(n);
        else
          faults.push({
            at: i,
            text: backText(rowNumbers[i]!, name, metres[before]!, d),
            kind: 'distance back',
          });
        const step = n > 1 ? distance_m[n - 1]! - distance_m[n - 2]! : 0;
        offset = distance_m[n - 1]! + step - d;
      }
    }
    kept[n] = i;
    distance_m[n++] = d + offset;
  }
  const mended = [
    left.twice.sentence((rows) => `${count(rows, 'row')} with the distance of the row before left out`),
    left.late.sentence((rows) => `${count(rows, 'row')} behind the row before left out`),
    left.blank.sentence((rows) => `${count(rows, 'row')} without a distance left out`),
  ].filter((sentence) => sentence !== '');
  return {
    line: { kept: kept.slice(0, n), time_s: null, restarts: [], faults: [], mended },
    distance: { distance_m: distance_m.slice(0, n), resets, faults, mended: [] },
  };
}
