/** Columns as a person sees them: name, role, unit and a small picture. */
import type { TraceColumn, UnderstoodTrace } from '../circuit/understood.ts';
import { fingerprintOf } from './fingerprint.ts';
import { mostGap } from './judge-laps.ts';
import type { UsedExtra } from './lap-extras.ts';
import type { MotionLog } from './motion-log.ts';
import { chosenUnit, isForeign, statedUnit, type Sources } from './sources.ts';
import { rangeOf } from './statistics.ts';
import { thumbnailOf, type Overview } from './thumbnails.ts';
import type { MotionUnits } from './time-units.ts';
import { unitsOf } from './units.ts';

export const shared = ({ format, header, columns }: Sources) => ({
  delimiter: format.delimiter,
  decimal: format.decimal,
  firstRows: columns.firstRows,
  rows: columns.rowNumbers.length,
  fingerprint: fingerprintOf(header, format),
});

/** Columns without a lap: a person can say which is which. */
export function shownOnly(sources: Sources): UnderstoodTrace {
  const rows = sources.columns.rowNumbers;
  const overview = { rows: rows.map((_, i) => i), at: rows.map((_, i) => i), gap: Infinity };
  return {
    ...shared(sources),
    columns: sources.header.names.map((_, i) => columnOf(sources, i, { extras: [], overview })),
    duration_s: NaN,
    lapsBy: 'none',
    laps: [],
    lap: null,
    meanInterval_s: NaN,
    mended: sources.columns.mended,
    question: sources.format.question,
  };
}

export const overviewOf = (log: MotionLog): Overview => ({
  rows: log.kept,
  at: log.time_s,
  gap: mostGap(log),
});

interface Shown {
  units?: MotionUnits;
  extras: readonly UsedExtra[];
  overview: Overview;
}

export function columnOf(sources: Sources, i: number, { units, extras, overview }: Shown): TraceColumn {
  const { header, columns, roles } = sources;
  const role = roles[i] ?? null;
  const values = columns.values[i]!;
  const kind = columns.kinds[i]!;
  const isOpen = isForeign(sources, i);
  const isClock = kind === 'clock' || kind === 'date-time';
  const extra = extras.find(({ at }) => at === i);
  const motionUnit =
    role === 'time' || role === 'distance' || role === 'speed' ? units?.unit[role] : undefined;
  const said = chosenUnit(sources, i) ?? (role ? statedUnit(sources, i) : header.units[i]!);
  return {
    name: header.names[i]!,
    role,
    unit: isOpen ? '' : isClock ? CLOCK_UNITS[kind] : (extra?.unit ?? motionUnit ?? said),
    units: role && !isClock ? unitsOf(role) : [],
    unitReason:
      isOpen || isClock
        ? ''
        : (extra?.reason ?? (motionUnit && role ? (units?.reason[role as 'time'] ?? '') : '')),
    thumbnail: thumbnailOf(values, overview),
    ...rangeOf(values),
  };
}

const CLOCK_UNITS = { clock: 'hh:mm:ss', 'date-time': 'date and time' };
