/** Rows in the order of time: clocks that wrap are unwrapped, rows that come twice or late are left out, and said. */
import { quantile } from './statistics.ts';
import { count, quantity, Tally } from './words.ts';

/** Something in a row that a stint cannot be run over. */
export interface Fault {
  /** Index among the rows of numbers. */
  at: number;
  text: string;
  /** Faults of the same kind are said once, with their count; what has none is said alone. */
  kind?: string;
}

/** One sentence a kind, by its first row. */
export function together(faults: readonly Fault[]): string[] {
  const kinds = new Map<string, { text: string; more: number }>();
  for (const { kind, text } of faults) {
    const first = kinds.get(kind ?? text);
    if (first) first.more += 1;
    else kinds.set(kind ?? text, { text, more: 0 });
  }
  return [...kinds.values()].map(({ text, more }) =>
    more > 0 ? `${text}, and so in ${count(more, 'more row')}` : text,
  );
}

export interface TimeLine {
  /** Indices of the rows that are used. */
  kept: Uint32Array;
  /** Since the first of them, rising; where time is not logged, none [s] */
  time_s: Float64Array | null;
  /** Indices into `kept` at which the log, or a new lap's time, starts again. */
  restarts: number[];
  faults: Fault[];
  mended: string[];
}

export interface TimeColumn {
  /** In seconds from whatever start. */
  seconds: Float64Array;
  name: string;
  /** Counters wrap at powers of two of their own unit [s]; 0 for a clock. */
  unit_s: number;
}

/** A row that is late by less is left out; by more, something else happened [s] */
const LATE_S = 2;
/** A run's time starts again this near its first [s] */
const NEAR_START_S = 2;
/** At a wrap the step may be this long [s]: longer, and it is no wrap. */
const WRAP_STEP_S = 1;
const WRAP_INTERVALS = 5;
/** A row that is ahead by more, while the next is not, is out of its place [s] */
const AHEAD_S = 10;

/** Seconds, minutes, hours, half a day, a day, a week. */
const DAY_S = 86_400;
const CLOCK_WRAPS_S = [60, 3600, 43_200, DAY_S, 604_800];
const COUNTER_WRAPS = [2 ** 16, 2 ** 32];
/** Counters behind a column in seconds: milliseconds, microseconds [s] */
const HIDDEN_COUNTERS_S = [2 ** 16 * 1e-3, 2 ** 32 * 1e-3, 2 ** 32 * 1e-6];

/**
 * @param isFilled - whether a row has a speed, by index
 * @param startsAnew - whether something else says that a lap starts in this row
 */
export function timeLine(
  { seconds, name, unit_s }: TimeColumn,
  rowNumbers: Uint32Array,
  isFilled: (i: number) => boolean,
  startsAnew: (i: number, before: number) => boolean,
): TimeLine {
  const { lowest, highest, interval, isBackwards, first } = spanOf(seconds, isFilled);
  const wraps = wrapsFor(unit_s).filter((wrap) => highest < wrap && wrap > 8 * interval);
  const kept = new Uint32Array(seconds.length);
  const time_s = new Float64Array(seconds.length);
  const restarts: number[] = [];
  const faults: Fault[] = isBackwards
    ? [{ at: first, text: `column ${name}: it runs backwards; put the rows in the order of time` }]
    : [];
  const left = { twice: new Tally(), late: new Tally(), ahead: new Tally(), blank: new Tally() };
  const wrapped = { n: 0, at_s: 0 };
  const step = Math.max(WRAP_STEP_S, WRAP_INTERVALS * interval);
  let n = 0;
  let offset = -Infinity;
  let raw = NaN;

  for (let i = 0; i < seconds.length; i++) {
    const t = seconds[i]!;
    if (!isFilled(i)) continue;
    if (Number.isNaN(t)) {
      left.blank.note(rowNumbers[i]!);
      continue;
    }
    if (n === 0) offset = -t;
    else {
      const last = time_s[n - 1]!;
      const ahead = t + offset - last;
      if (Math.abs(ahead) < 1e-6 * interval) {
        left.twice.note(rowNumbers[i]!);
        continue;
      }
      if (ahead > AHEAD_S && isAlone(i, last)) {
        left.ahead.note(rowNumbers[i]!);
        continue;
      }
      if (ahead < 0) {
        const isNew = startsAnew(i, kept[n - 1]!);
        const wrap = isNew ? undefined : wraps.find((w) => raw > w - step && t < step && t + w - raw <= step);
        if (wrap !== undefined) {
          offset += wrap;
          wrapped.n += 1;
          wrapped.at_s = wrap;
        } else if (!isNew && ahead >= -LATE_S && t - lowest > 0) {
          left.late.note(rowNumbers[i]!);
          continue;
        } else {
          if (isBackwards) continue;
          if (!isNew && t - lowest > NEAR_START_S)
            faults.push({ at: i, text: backText(i, raw, t), kind: 'back' });
          else restarts.push(n);
          offset = last + interval - t;
        }
      }
    }
    raw = t;
    kept[n] = i;
    time_s[n++] = t + offset;
  }

  /** Whether the next row goes on from the last as if this one were not there. */
  function isAlone(i: number, last: number): boolean {
    const next = seconds[i + 1];
    if (next === undefined || !isFilled(i + 1)) return false;
    const after = next + offset - last;
    return after > 0 && after < AHEAD_S && next < seconds[i]!;
  }

  function backText(i: number, from: number, to: number): string {
    const [a, b] = [from - lowest, to - lowest].map((value) => quantity(value, 's', 1));
    return `row ${rowNumbers[i]}, column ${name}: it jumps back from ${a} to ${b} after the first row`;
  }

  return {
    kept: kept.slice(0, n),
    time_s: time_s.slice(0, n),
    restarts,
    faults,
    mended: [
      wrapped.n > 0
        ? wrapped.at_s === DAY_S
          ? `${name} passes midnight: read on`
          : `${name} starts again ${wrapped.n === 1 ? 'once' : `${wrapped.n} times`} after ${quantity(wrapped.at_s, 's', wrapped.at_s % 1 ? 3 : 0)}: read as a counter that wraps`
        : '',
      left.twice.sentence((rows) => `${count(rows, 'row')} with the time of the row before left out`),
      left.late.sentence((rows) => `${count(rows, 'row')} earlier than the row before left out`),
      left.ahead.sentence((rows) => `${count(rows, 'row')} far ahead of the rows around left out`),
      left.blank.sentence((rows) => `${count(rows, 'row')} without a time left out`),
    ].filter((sentence) => sentence !== ''),
  };
}

function spanOf(seconds: Float64Array, isFilled: (i: number) => boolean) {
  let lowest = Infinity;
  let highest = -Infinity;
  let last = NaN;
  let first = -1;
  let ups = 0;
  let downs = 0;
  const steps = new Float64Array(seconds.length);
  for (let i = 0; i < seconds.length; i++) {
    const t = seconds[i]!;
    steps[i] = NaN;
    if (Number.isNaN(t) || !isFilled(i)) continue;
    if (t > last) steps[i] = t - last;
    if (t > last) ups += 1;
    if (t < last) downs += 1;
    if (first < 0) first = i;
    if (t < lowest) lowest = t;
    if (t > highest) highest = t;
    last = t;
  }
  return { lowest, highest, first, isBackwards: downs > ups, interval: quantile(steps, 0.5) };
}

const wrapsFor = (unit_s: number): number[] =>
  unit_s === 0
    ? CLOCK_WRAPS_S
    : [...CLOCK_WRAPS_S, ...COUNTER_WRAPS.map((wrap) => wrap * unit_s), ...HIDDEN_COUNTERS_S].sort(
        (a, b) => a - b,
      );
