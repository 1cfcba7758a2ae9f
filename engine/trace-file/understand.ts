/** What the columns of a file mean: roles, units, laps, the lap that is used, and all of it put in words. */
import type { TraceColumns } from '../circuit/trace.ts';
import type { TraceRole, UnderstoodTrace } from '../circuit/understood.ts';
import { cutLaps } from './cut-laps.ts';
import { fastest, judgeLaps, type JudgedLap } from './judge-laps.ts';
import { columnsOfLap, extrasFor } from './lap-extras.ts';
import { returnsIn } from './lap-returns.ts';
import type { Columns } from './read-columns.ts';
import { readMotion, type ReadMotion } from './read-motion.ts';
import { lapsQuestion, speedQuestion } from './questions.ts';
import { plainName, roleNamed } from './role-names.ts';
import { slowText } from './sample-rate.ts';
import { columnOf, overviewOf, shared, shownOnly } from './show-columns.ts';
import { chosenUnit, foreignUnits, statedUnit, type Sources } from './sources.ts';
import { spreadText, spreadTimes } from './spread-times.ts';
import { differences, quantile, rangeOf } from './statistics.ts';
import { together } from './time-line.ts';
import { motionUnits, type MotionColumn, type MotionUnits } from './time-units.ts';
import { joined, plain } from './words.ts';

interface Understanding {
  understood: UnderstoodTrace;
  problems: string[];
  columns: TraceColumns | null;
}

export function understandColumns(given: Sources): Understanding {
  const { sources, mended: spread } = withSpreadTimes(given);
  const { header, columns, roles } = sources;
  const index: Partial<Record<TraceRole, number>> = {};
  roles.forEach((role, i) => {
    if (role && !isEmpty(columns, i, role)) index[role] ??= i;
  });
  const isMoving = index.speed !== undefined && (index.time ?? index.distance) !== undefined;
  const empty = emptyColumns(sources);
  const problems = [
    ...missingRoles(sources),
    ...(isMoving ? [] : empty.map(({ text }) => `column ${text}`)),
    ...foreignUnits(sources),
  ];
  if (!isMoving) return only(sources, problems);
  if (isStill(columns.values[index.speed!]!))
    return only(sources, [...problems, `column ${header.names[index.speed!]!}: it is always 0`]);

  const units = unitsFor(sources, index);
  const motion = readMotion({ columns, names: header.names, index, units });
  const { log } = motion;
  if (log.kept.length < 2) {
    const why = together(log.faults);
    return only(sources, [
      ...problems,
      ...(why.length > 0 ? why : ['rows: none has a speed and a time or distance']),
    ]);
  }
  const lapNumbers = index.lap === undefined ? null : columns.values[index.lap]!;
  const { choices } = sources;
  const {
    lapsBy,
    laps: cut,
    mended: pieces,
    problems: uncut,
  } = cutLaps(log, {
    lapNumbers,
    resets: motion.resets,
    returns: returnsIn(sources, log),
    lapsBy: choices.lapsBy,
    lapStarts_s: choices.lapStarts_s,
  });
  const laps = judgeLaps(log, cut);
  const lap = choices.lap !== undefined && laps[choices.lap] ? choices.lap : fastest(laps);
  const extras = extrasFor(sources, index, log);
  const used = lap === null ? null : columnsOfLap(log, laps[lap]!, extras, header.names);
  const tooFast = units.chosenTooFast ? together(log.faults.filter(({ kind }) => kind === 'too fast')) : [];
  const timeText = units.chosenApart && `column ${header.names[index.time!]!}: ${units.chosenApart}`;
  const implausible = tooFast.length > 0 ? tooFast : timeText ? [timeText] : lapProblems(laps, lap);
  const interval_s = quantile(differences(log.time_s), 0.5);
  // What an answer may change is not said before it is given.
  const question =
    sources.format.question ??
    speedQuestion(units, index.speed!, choices) ??
    (choices.lapsBy === undefined && cut.length === 1 && !units.chosenTooFast && !units.chosenApart
      ? lapsQuestion(log, choices)
      : null);
  return {
    problems: question ? foreignUnits(sources) : [...problems, ...uncut, ...implausible],
    columns: uncut.length > 0 ? null : (used?.columns ?? null),
    understood: {
      ...shared(sources),
      columns: header.names.map((_, i) => columnOf(sources, i, { units, extras, overview: overviewOf(log) })),
      duration_s: log.time_s.at(-1)!,
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
        ...empty.map(({ text }) => `${text}; not used`),
        ...spread,
        ...stillSpeeds(sources, index.speed!),
        ...pieces,
        ...mendedMotion(motion, sources, index),
        ...extras.flatMap(({ mended }) => mended),
        ...(used?.mended ?? []),
        ...(lap === null ? [] : slowText(log, laps[lap]!)),
      ],
      question,
    },
  };
}

/** A clock that is coarser than the rows, made as fine as they are. */
function withSpreadTimes(sources: Sources): { sources: Sources; mended: string[] } {
  const { columns, header, roles } = sources;
  const [time, speed] = [roles.indexOf('time'), roles.indexOf('speed')];
  const spread = time >= 0 && speed >= 0 ? spreadTimes(columns.values[time]!, columns.values[speed]!) : null;
  if (!spread) return { sources, mended: [] };
  return {
    sources: { ...sources, columns: { ...columns, values: columns.values.with(time, spread.times) } },
    mended: [spreadText(header.names[time]!, spread.rows)],
  };
}

/** Other columns that are called a speed and always show nothing. */
function stillSpeeds({ header, columns }: Sources, used: number): string[] {
  return header.names.flatMap((name, i) =>
    i !== used && roleNamed(name)?.role === 'speed' && isStill(columns.values[i]!)
      ? [`${name} is always 0: ${header.names[used]!} is the speed`]
      : [],
  );
}

function isStill(values: Float64Array): boolean {
  const { low, high } = rangeOf(values);
  return low === 0 && high === 0;
}

/** Columns without a lap: a person can say which is which. */
const only = (sources: Sources, problems: string[]): Understanding => ({
  problems: sources.format.question ? [] : problems,
  columns: null,
  understood: shownOnly(sources),
});

function missingRoles({ header, columns, roles }: Sources): string[] {
  const { names, isNamed } = header;
  const has = (role: TraceRole): boolean => roles.includes(role);
  const among = joined(names.slice(0, 12), 'or');
  const how = isNamed ? 'is named' : 'is seen';
  const missing: string[] = [];
  if (!has('speed')) missing.push(`header: no column ${how} as a speed; say which it is: ${among}`);
  if (has('time') || has('distance')) return missing;
  const still = names.findIndex((name, i) => isNamed && roleNamed(name)?.role === 'time' && !roles[i]);
  if (still >= 0) missing.push(`column ${names[still]!}: ${whyNoTime(columns.values[still]!)}`);
  else missing.push(`header: no column ${how} as a time or a distance; say which it is: ${among}`);
  return missing;
}

/** What is wrong with a column that is called a time. */
function whyNoTime(values: Float64Array): string {
  const { low, high } = rangeOf(values);
  if (values.length < 2) return 'it has one row; a lap needs more';
  return low === high ? `it is always ${plain(low)}; a time must rise` : 'it does not rise from row to row';
}

function isEmpty({ values, kinds }: Columns, i: number, role: TraceRole): boolean {
  return Number.isNaN(rangeOf(values[i]!).low) || (kinds[i] === 'text' && role !== 'lap');
}

/** Columns whose name promises what their cells do not hold. */
function emptyColumns({ header, columns, roles }: Sources): { text: string }[] {
  return header.names.flatMap((name, i) => {
    const role = roles[i];
    if (!role || !isEmpty(columns, i, role)) return [];
    const got = columns.texts[i] ? `'${columns.texts[i].slice(0, 40)}'` : 'nothing';
    return [{ text: `${name}: expected numbers, got ${got}` }];
  });
}

/** Speed over ground, as receivers from the sea call it. */
const isNautical = (name: string): boolean => /^(sog|speed over ground)\b/.test(plainName(name));

function unitsFor(sources: Sources, index: Partial<Record<TraceRole, number>>): MotionUnits {
  const { columns } = sources;
  const column = (at: number): MotionColumn => ({
    values: columns.values[at]!,
    stated: columns.kinds[at] === 'number' ? statedUnit(sources, at) : 's',
    chosen: columns.kinds[at] === 'number' ? chosenUnit(sources, at) : 's',
  });
  return motionUnits({
    speed: { ...column(index.speed!), isNautical: isNautical(sources.header.names[index.speed!]!) },
    ...(index.time === undefined ? {} : { time: column(index.time) }),
    ...(index.distance === undefined ? {} : { distance: column(index.distance) }),
  });
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
