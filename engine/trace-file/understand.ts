/** What the columns of a file mean: roles, units, laps, the lap that is used, and all of it put in words. */
import type { TraceColumns } from '../circuit/trace.ts';
import type {
  TraceChoices,
  TraceColumn,
  TraceQuestion,
  TraceRole,
  UnderstoodTrace,
} from '../circuit/understood.ts';
import { cutLaps } from './cut-laps.ts';
import type { Extra, ExtraRole } from './extra.ts';
import { extraOf, filledBetween, filledText } from './extras.ts';
import { fingerprintOf } from './fingerprint.ts';
import type { GuessedFormat } from './guess-format.ts';
import type { Header } from './header.ts';
import { fastest, judgeLaps, mostGap, type JudgedLap } from './judge-laps.ts';
import { lapColumns, type MotionLog } from './motion-log.ts';
import type { Columns } from './read-columns.ts';
import { badCells, readMotion, type ReadMotion } from './read-motion.ts';
import type { Roles } from './roles.ts';
import { differences, quantile, rangeOf } from './statistics.ts';
import { thumbnailOf, type Overview } from './thumbnails.ts';
import { motionUnits, type MotionColumn, type MotionUnits } from './time-units.ts';
import { unitNamed, unitsOf } from './units.ts';
import { count, joined, plain, quantity } from './words.ts';

interface Sources {
  format: GuessedFormat;
  header: Header;
  columns: Columns;
  roles: Roles;
  choices: TraceChoices;
}

interface Understanding {
  understood: UnderstoodTrace;
  problems: string[];
  columns: TraceColumns | null;
}

const EXTRAS: readonly [ExtraRole, Exclude<keyof TraceColumns, 'time_s' | 'distance_m' | 'speed_mps'>][] = [
  ['slope', 'slope'],
  ['altitude', 'height_m'],
  ['acceleration', 'accel_mps2'],
  ['front brake pressure', 'brakeFront_Pa'],
  ['rear brake pressure', 'brakeRear_Pa'],
];

export function understandColumns(sources: Sources): Understanding {
  const { header, columns, roles } = sources;
  const index: Partial<Record<TraceRole, number>> = {};
  roles.forEach((role, i) => {
    if (role) index[role] ??= i;
  });
  const problems = [
    ...missingRoles(header, roles),
    ...emptyColumns(header, columns, index),
    ...foreignUnits(sources),
  ];
  const isMoving = index.speed !== undefined && (index.time ?? index.distance) !== undefined;
  if (!isMoving || emptyColumns(header, columns, index).length > 0) return shownOnly(sources, problems);

  const units = unitsFor(sources, index);
  const motion = readMotion({ columns, names: header.names, index, units });
  const { log } = motion;
  if (log.kept.length < 2)
    return shownOnly(sources, [...problems, 'rows: none has a speed and a time or distance']);
  const lapNumbers = index.lap === undefined ? null : columns.values[index.lap]!;
  const { choices } = sources;
  const { lapsBy, laps: cut } = cutLaps(log, {
    lapNumbers,
    resets: motion.resets,
    lapsBy: choices.lapsBy,
    lapStarts_s: choices.lapStarts_s,
  });
  const laps = judgeLaps(log, cut);
  const lap = choices.lap !== undefined && laps[choices.lap] ? choices.lap : fastest(laps);
  const extras = extrasFor(sources, index, log);
  const used = lap === null ? null : columnsOfLap(log, laps[lap]!, extras, header.names);
  const interval_s = quantile(differences(log.time_s), 0.5);
  return {
    problems: [...problems, ...lapProblems(laps, lap)],
    columns: used?.columns ?? null,
    understood: {
      ...shared(sources),
      columns: header.names.map((_, i) => columnOf(sources, i, { units, extras, overview: overviewOf(log) })),
      lapsBy,
      laps: laps.map(({ lap: number, start_s, duration_s, length_m, problem }) => ({
        lap: number,
        start_s,
        duration_s,
        length_m,
        problem,
      })),
      lap,
      meanInterval_s:
        lap === null ? interval_s : laps[lap]!.duration_s / (laps[lap]!.to - laps[lap]!.from - 1),
      mended: [
        ...columns.mended,
        ...mendedMotion(motion, sources, index),
        ...extras.flatMap(({ mended }) => mended),
        ...(used?.mended ?? []),
      ],
      question: sources.format.question ?? speedQuestion(units, index.speed!, choices),
    },
  };
}

const shared = ({ format, header, columns }: Sources) => ({
  delimiter: format.delimiter,
  decimal: format.decimal,
  firstRows: columns.firstRows,
  rows: columns.rowNumbers.length,
  fingerprint: fingerprintOf(header, format),
});

/** Columns without a lap: a person can say which is which. */
function shownOnly(sources: Sources, problems: string[]): Understanding {
  const rows = sources.columns.rowNumbers;
  const overview = { rows: rows.map((_, i) => i), at: rows.map((_, i) => i), gap: Infinity };
  return {
    problems,
    columns: null,
    understood: {
      ...shared(sources),
      columns: sources.header.names.map((_, i) => columnOf(sources, i, { extras: [], overview })),
      lapsBy: 'none',
      laps: [],
      lap: null,
      meanInterval_s: NaN,
      mended: sources.columns.mended,
      question: sources.format.question,
    },
  };
}

function missingRoles({ names, isNamed }: Header, roles: Roles): string[] {
  const has = (role: TraceRole): boolean => roles.includes(role);
  const among = joined(names.slice(0, 12), 'or');
  const how = isNamed ? 'is named' : 'is seen';
  const missing: string[] = [];
  if (!has('speed')) missing.push(`header: no column ${how} as a speed; say which it is: ${among}`);
  if (!has('time') && !has('distance'))
    missing.push(`header: no column ${how} as a time or a distance; say which it is: ${among}`);
  return missing;
}

function emptyColumns(
  { names }: Header,
  { values }: Columns,
  index: Partial<Record<TraceRole, number>>,
): string[] {
  const needed = [index.speed, index.time ?? index.distance].filter((at) => at !== undefined);
  return needed
    .filter((at) => Number.isNaN(rangeOf(values[at]!).low))
    .map((at) => `column ${names[at]}: there is not one number in it`);
}

/** What the file states, as a unit of the column's role; empty where it states none. */
function statedUnit({ header, columns, roles }: Sources, i: number): string {
  const role = roles[i];
  if (!role || columns.kinds[i] === 'clock' || columns.kinds[i] === 'date-time') return '';
  return unitNamed(role, header.units[i]!) ?? '';
}

/** A unit that is none of its role's is a problem for the columns that a lap needs. */
function foreignUnits(sources: Sources): string[] {
  const { header, roles, choices, columns } = sources;
  return header.names.flatMap((name, i) => {
    const role = roles[i];
    if (role !== 'speed' && role !== 'time' && role !== 'distance') return [];
    const isClear =
      header.units[i] === '' || choices.units?.[i] || statedUnit(sources, i) || columns.kinds[i] !== 'number';
    return isClear
      ? []
      : [`column ${name}: expected a unit of ${unitsOf(role).join(', ')}, got '${header.units[i]}'`];
  });
}

function chosenUnit({ roles, choices, columns }: Sources, i: number): string | undefined {
  const role = roles[i];
  const chosen = choices.units?.[i];
  if (!role || chosen === undefined || columns.kinds[i] === 'clock' || columns.kinds[i] === 'date-time')
    return undefined;
  return unitNamed(role, chosen);
}

function unitsFor(sources: Sources, index: Partial<Record<TraceRole, number>>): MotionUnits {
  const { columns } = sources;
  const column = (at: number): MotionColumn => ({
    values: columns.values[at]!,
    stated: columns.kinds[at] === 'number' ? statedUnit(sources, at) : 's',
    chosen: columns.kinds[at] === 'number' ? chosenUnit(sources, at) : 's',
  });
  return motionUnits({
    speed: column(index.speed!),
    ...(index.time === undefined ? {} : { time: column(index.time) }),
    ...(index.distance === undefined ? {} : { distance: column(index.distance) }),
  });
}

function speedQuestion(
  { open, topSpeed }: MotionUnits,
  at: number,
  choices: TraceChoices,
): TraceQuestion | null {
  if (open.length === 0) return null;
  return {
    text: `Is the speed in ${joined(
      open.map(({ unit }) => unit),
      'or',
    )}? Its highest is ${plain(topSpeed)}.`,
    answers: open.map(({ unit, top_kmh }) => ({
      text: unit === 'km/h' ? unit : `${unit}, up to ${quantity(top_kmh, 'km/h')}`,
      choices: { ...choices, units: { ...choices.units, [at]: unit } },
    })),
  };
}

interface UsedExtra extends Extra {
  at: number;
  key: (typeof EXTRAS)[number][1];
}

function extrasFor(sources: Sources, index: Partial<Record<TraceRole, number>>, log: MotionLog): UsedExtra[] {
  const { header, columns } = sources;
  return EXTRAS.flatMap(([role, key]) => {
    const at = index[role];
    if (at === undefined) return [];
    const name = header.names[at]!;
    const values = Float64Array.from(log.kept, (row) => columns.values[at]![row]!);
    const extra = extraOf(
      { role, name, values, stated: statedUnit(sources, at), chosen: chosenUnit(sources, at) },
      log,
    );
    const [first, ...others] = badCells(columns, at, name);
    const spoilt = first ? [`${name}: ${count(others.length + 1, 'cell')} left out; ${first.text}`] : [];
    return [{ ...extra, at, key, mended: [...spoilt, ...extra.mended] }];
  });
}

/** The lap in SI; a column with a hole in it is left out, for a hole is not bridged. */
function columnsOfLap(
  log: MotionLog,
  lap: JudgedLap,
  extras: readonly UsedExtra[],
  names: readonly string[],
) {
  const columns = lapColumns(log, lap);
  const mended: string[] = [];
  if (log.distance_m && !columns.distance_m)
    mended.push('The distance is not used: it has blank cells in this lap');
  for (const { si, key, at } of extras) {
    if (!si) continue;
    const time_s = log.time_s.subarray(lap.from, lap.to);
    const { filled, values } = filledBetween(si.subarray(lap.from, lap.to), time_s, mostGap(log));
    if (values.some(Number.isNaN)) {
      mended.push(`${names[at]} is not used: for over a second of this lap it has nothing`);
      continue;
    }
    columns[key] = values;
    if (filled > 0) mended.push(filledText(names[at]!, filled));
  }
  return { columns, mended };
}

function lapProblems(laps: readonly JudgedLap[], lap: number | null): string[] {
  if (lap !== null) return laps[lap]!.problems;
  const [only] = laps;
  if (laps.length === 1) return only!.problems;
  if (!only) return ['laps: not one has three rows'];
  return laps.map((each) => `lap ${each.lap}: ${each.problem}`);
}

function mendedMotion(
  { mended, log }: ReadMotion,
  { header }: Sources,
  index: Partial<Record<TraceRole, number>>,
): string[] {
  const isDerived = !log.isTimed && index.distance !== undefined;
  return isDerived
    ? [...mended, `No time in the file: it follows from ${header.names[index.distance!]} and the speed`]
    : mended;
}

const overviewOf = (log: MotionLog): Overview => ({ rows: log.kept, at: log.time_s, gap: mostGap(log) });

interface Shown {
  units?: MotionUnits;
  extras: readonly UsedExtra[];
  overview: Overview;
}

function columnOf(sources: Sources, i: number, { units, extras, overview }: Shown): TraceColumn {
  const { header, columns, roles } = sources;
  const role = roles[i] ?? null;
  const values = columns.values[i]!;
  const kind = columns.kinds[i]!;
  const isClock = kind === 'clock' || kind === 'date-time';
  const extra = extras.find(({ at }) => at === i);
  const motionUnit =
    role === 'time' || role === 'distance' || role === 'speed' ? units?.unit[role] : undefined;
  const said = chosenUnit(sources, i) ?? (role ? statedUnit(sources, i) : header.units[i]!);
  return {
    name: header.names[i]!,
    role,
    unit: isClock ? CLOCK_UNITS[kind] : (extra?.unit ?? motionUnit ?? said),
    units: role && !isClock ? unitsOf(role) : [],
    unitReason: isClock
      ? ''
      : (extra?.reason ?? (motionUnit && role ? (units?.reason[role as 'time'] ?? '') : '')),
    thumbnail: thumbnailOf(values, overview),
    ...rangeOf(values),
  };
}

const CLOCK_UNITS = { clock: 'hh:mm:ss', 'date-time': 'date and time' };
