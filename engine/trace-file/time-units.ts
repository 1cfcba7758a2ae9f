/** Units of time, distance and speed together: each must make sense, and speed over time must make the distance. */
import type { TraceRole } from '../circuit/understood.ts';
import { kmhFromMps } from '../units.ts';
import { quantile, sampled } from './statistics.ts';
import { sizeOf, unitsOf } from './units.ts';
import { joined, plain, quantity } from './words.ts';

type MotionRole = Extract<TraceRole, 'time' | 'distance' | 'speed'>;

export interface MotionColumn {
  values: Float64Array;
  /** As the file states it, or empty. */
  stated: string;
  /** As a person chose it: it stands, whatever speaks against it. */
  chosen?: string | undefined;
  /** Knots are as likely as any other. */
  isNautical?: boolean;
}

export type MotionColumns = Partial<Record<MotionRole, MotionColumn>> & { speed: MotionColumn };

export interface MotionUnits {
  unit: Partial<Record<MotionRole, string>>;
  reason: Partial<Record<MotionRole, string>>;
  /** Units of the speed that fit equally well: a person must say which. */
  open: { unit: string; top_kmh: number }[];
  topSpeed: number;
  /** Where a unit that a person chose makes a speed of no car: what would fit. Empty elsewhere. */
  chosenTooFast: string;
  /** Where a chosen unit of time sets the rows apart as in no log. Empty elsewhere. */
  chosenApart: string;
}

/** Rows apart by less or more than this are no log of a lap [s] */
const INTERVAL_S = { least: 4e-4, most: 6 };
const MOST_KMH = 400;
/** Top speeds in a lap of a circuit; beyond them another unit is likelier [km/h] */
const LIKELY_KMH = { least: 90, most: 350 };
/** Changes of speed over half a second, one in fifty of them above [m/s²] */
const LIKELY_MPS2 = { least: 0.15, most: 80 };
/** Length of a whole file [m] */
const LIKELY_M = { least: 400, most: 1_500_000 };
/** Speed over time and distance may disagree by this before a unit must be wrong. */
export const AGREEMENT = 0.1;

/** Costs of a reading: not what the file says; not the usual unit; unlikely. */
const NOT_STATED = 1;
const NOT_USUAL = 0.04;
const UNLIKELY = 0.05;
const RARE = 0.5;
/** Readings this near fit equally well. */
const TIE = 0.01;

const COMMON_SPEEDS = ['km/h', 'mph', 'm/s'];

/** A lap's changes of speed show over this; over less the noise of a fast log shows [s] */
const CHANGE_S = 0.5;
const STRIDES = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];
/** Steps larger than this many usual ones are gaps, laps or glitches and prove nothing. */
const USUAL_STEPS = 5;

/** What is known of the columns in their own units. */
interface Raw {
  interval: number;
  /** Where there is no time: step of distance over speed. */
  crossing: number;
  top: number;
  /** Changes of speed over each of the strides. */
  changes: number[];
  driven: number;
  along: number;
}

export function motionUnits(columns: MotionColumns): MotionUnits {
  const raw = rawOf(columns);
  const readings = readingsOf(columns).map((reading) => ({ ...reading, ...judged(reading, raw, columns) }));
  const possible = readings.filter(({ isPossible }) => isPossible);
  const agreeing = possible.filter(({ agrees }) => agrees);
  const candidates = [agreeing, possible, readings].find((list) => list.length > 0)!;
  const ranked = candidates.toSorted((a, b) => a.cost - b.cost);
  const best = ranked[0]!;
  const isUnsaid = !columns.speed.stated && !columns.speed.chosen;
  const ties = isUnsaid ? ranked.filter(({ cost }) => cost < best.cost + TIE) : [];
  const speeds = [...new Set(ties.map(({ unit }) => unit.speed!))];
  return {
    unit: best.unit,
    reason: reasons(best.unit, columns, raw, speeds.length > 1),
    open: speeds.length > 1 ? speeds.map((unit) => ({ unit, top_kmh: topKmh(raw, unit) })) : [],
    topSpeed: raw.top,
    chosenTooFast: tooFast(columns, raw),
    chosenApart: apart(columns, best.unit, raw),
  };
}

/** A choice stands, here and for the next file of the same header; the sentence says where it came from. */
function tooFast({ speed }: MotionColumns, raw: Raw): string {
  if (!speed.chosen || topKmh(raw, speed.chosen) <= MOST_KMH) return '';
  const fitting = COMMON_SPEEDS.filter((unit) => isWithin(topKmh(raw, unit), LIKELY_KMH));
  const other = fitting.length > 0 ? `; ${joined(fitting, 'or')} would fit` : '';
  return `, read in ${speed.chosen} as you corrected it before${other}`;
}

function apart({ time }: MotionColumns, unit: MotionUnits['unit'], raw: Raw): string {
  const intervalIn = (name: string): number => raw.interval * sizeOf('time', name);
  if (!time?.chosen || isWithin(intervalIn(time.chosen), INTERVAL_S)) return '';
  const other = unitsOf('time').find((name) => isWithin(intervalIn(name), INTERVAL_S));
  const why = against('time', time.chosen, unit, raw);
  return `${why}, read in ${time.chosen} as you corrected it before${other ? `; ${other} would fit` : ''}`;
}

interface Reading {
  unit: MotionUnits['unit'];
  cost: number;
}

/** Every way to read the units, what is usual and what the file says first. */
function readingsOf(columns: MotionColumns): Reading[] {
  return (['time', 'distance', 'speed'] as const).reduce<Reading[]>(
    (readings, role) => {
      const column = columns[role];
      if (!column) return readings;
      return readings.flatMap(({ unit, cost }) =>
        optionsOf(role, column).map((option) => ({
          unit: { ...unit, [role]: option.unit },
          cost: cost + option.cost,
        })),
      );
    },
    [{ unit: {}, cost: 0 }],
  );
}

function optionsOf(
  role: MotionRole,
  { stated, chosen, isNautical }: MotionColumn,
): { unit: string; cost: number }[] {
  if (chosen) return [{ unit: chosen, cost: 0 }];
  return unitsOf(role).map((unit, i) => {
    const isCommon = COMMON_SPEEDS.includes(unit) || (isNautical && unit === 'kn');
    const isRare = role === 'speed' ? !isCommon : i > 1;
    if (stated) return { unit, cost: unit === stated ? 0 : NOT_STATED + (isRare ? RARE : 0) };
    return { unit, cost: role === 'speed' ? (isRare ? RARE : 0) : NOT_USUAL * i };
  });
}

const size = (unit: MotionUnits['unit'], role: MotionRole): number => sizeOf(role, unit[role] ?? '');

const topKmh = (raw: Raw, unit: string): number => kmhFromMps(raw.top * sizeOf('speed', unit));

const isWithin = (value: number, { least, most }: { least: number; most: number }): boolean =>
  Number.isNaN(value) || (value >= least && value <= most);

function judged({ unit, cost }: Reading, raw: Raw, { time, distance }: MotionColumns) {
  const scale_s = time ? size(unit, 'time') : size(unit, 'distance') / size(unit, 'speed');
  const interval_s = (time ? raw.interval : raw.crossing) * scale_s;
  const top_kmh = topKmh(raw, unit.speed!);
  const driven_m = raw.driven * size(unit, 'speed') * size(unit, 'time');
  const along_m = raw.along * size(unit, 'distance');
  const doubts = [
    isWithin(top_kmh, LIKELY_KMH),
    isWithin(changeOf(raw, interval_s) * size(unit, 'speed'), LIKELY_MPS2),
    isWithin(time ? driven_m : along_m, LIKELY_M),
  ].filter((isLikely) => !isLikely).length;
  return {
    isPossible: isWithin(interval_s, INTERVAL_S) && !(top_kmh > MOST_KMH),
    agrees: !time || !distance || !(Math.abs(Math.log(driven_m / along_m)) > AGREEMENT),
    cost: cost + UNLIKELY * doubts,
  };
}

/** Change of speed a second, in the speed's own unit. */
function changeOf({ changes }: Raw, interval_s: number): number {
  const wide = STRIDES.filter((stride) => stride * interval_s <= CHANGE_S).length - 1;
  const at = Math.min(Math.max(0, wide), changes.length - 1);
  return changes[at]! / (STRIDES[at]! * interval_s);
}

function reasons(
  unit: MotionUnits['unit'],
  columns: MotionColumns,
  raw: Raw,
  isOpen: boolean,
): MotionUnits['reason'] {
  const found: MotionUnits['reason'] = {};
  for (const role of ['time', 'distance', 'speed'] as const) {
    const column = columns[role];
    if (!column || column.chosen || column.stated === unit[role]) continue;
    const why = column.stated ? against(role, column.stated, unit, raw) : '';
    found[role] = column.stated
      ? `stated ${column.stated}, but ${why}: read as ${unit[role]}`
      : `no unit given: ${role === 'speed' && isOpen ? 'more than one fits' : `read as ${unit[role]}${evidence(role, columns, topKmh(raw, unit.speed!))}`}`;
  }
  return found;
}

/** What speaks for a unit that nobody stated. */
function evidence(role: MotionRole, { time, distance }: MotionColumns, top_kmh: number): string {
  if (time && distance) return ', so that speed over time makes the distance';
  if (role !== 'speed') return '';
  return isWithin(top_kmh, LIKELY_KMH)
    ? ', which alone fits its highest'
    : ', though its highest is no lap’s';
}

/** What speaks against the stated unit of one column, the others as read. */
function against(role: MotionRole, stated: string, unit: MotionUnits['unit'], raw: Raw): string {
  const said = { ...unit, [role]: stated };
  const interval_s = raw.interval * size(said, 'time');
  if (role === 'time' && !(interval_s >= INTERVAL_S.least && interval_s <= INTERVAL_S.most)) {
    return `rows would be ${quantity(+interval_s.toPrecision(2), 's', interval_s < 1 ? 6 : 0)} apart`;
  }
  const top_kmh = topKmh(raw, said.speed!);
  if (role === 'speed' && top_kmh > MOST_KMH)
    return `the highest speed would be ${quantity(top_kmh, 'km/h')}`;
  const driven_m = raw.driven * size(said, 'speed') * size(said, 'time');
  if (Number.isNaN(driven_m))
    return `rows would be ${plain((raw.crossing * size(said, 'distance')) / size(said, 'speed'))} s apart`;
  const along_m = raw.along * size(said, 'distance');
  return `speed over time makes ${quantity(driven_m, 'm')} where the distance says ${quantity(along_m, 'm')}`;
}

function rawOf({ time, distance, speed }: MotionColumns): Raw {
  const { t, d, v } = filledRows(speed.values, time?.values, distance?.values);
  const mean = (i: number): number => (v[i]! + v[i - 1]!) / 2;
  const interval = usual(v.length, (i) => t[i]! - t[i - 1]!);
  const most = time ? USUAL_STEPS * interval : Infinity;
  let [driven, along] = [0, 0];
  for (let i = 1; i < v.length; i++) {
    const dt = t[i]! - t[i - 1]!;
    const dd = d[i]! - d[i - 1]!;
    if ((time && !(dt > 0 && dt < most)) || (distance && !(dd >= 0))) continue;
    driven += mean(i) * dt;
    along += dd;
  }
  const crossing = time ? NaN : usual(v.length, (i) => (d[i]! - d[i - 1]!) / mean(i));
  return { interval, crossing, top: quantile(v, 0.995), changes: changesOf(v), driven, along };
}

/** Rows that have a speed and what it is plotted over; without a column of one, NaN in its place. */
function filledRows(speed: Float64Array, time?: Float64Array, distance?: Float64Array) {
  const [t, d, v] = [0, 1, 2].map(() => new Float64Array(speed.length)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const over = (time ?? distance)!;
  let n = 0;
  for (let i = 0; i < speed.length; i++) {
    if (Number.isNaN(speed[i]! + over[i]!)) continue;
    t[n] = time ? time[i]! : NaN;
    d[n] = distance ? distance[i]! : NaN;
    v[n++] = speed[i]!;
  }
  return { t: t.subarray(0, n), d: d.subarray(0, n), v: v.subarray(0, n) };
}

/** The middle one of the steps that go on. */
function usual(n: number, step: (i: number) => number): number {
  const rising = sampled(n - 1, (i) => step(i + 1)).filter((value) => value > 0 && value < Infinity);
  return quantile(rising, 0.5);
}

function changesOf(speeds: Float64Array): number[] {
  return STRIDES.filter((stride) => stride === 1 || stride * 4 < speeds.length).map((stride) =>
    quantile(
      sampled(speeds.length - stride, (i) => Math.abs(speeds[i + stride]! - speeds[i]!)),
      0.98,
    ),
  );
}
