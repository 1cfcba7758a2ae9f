/** The words of the import: what parts cells, what laps are cut by, what a column is. Pure. */
import type {
  Decimal,
  Delimiter,
  LapsBy,
  TraceColumn,
  TraceLap,
  TraceRole,
  UnderstoodTrace,
} from '../../../../engine/index.ts';
import { clockTime, digitsOf, grouped, NBSP, withUnit } from '../../../display/format.ts';
import { unitName } from '../../../display/units.ts';

export const delimiters: readonly { value: Delimiter; text: string }[] = [
  { value: ',', text: 'comma' },
  { value: ';', text: 'semicolon' },
  { value: '\t', text: 'tab' },
  { value: ' ', text: 'spaces' },
  { value: '|', text: 'upright bar' },
];

export const decimals: readonly { value: Decimal; text: string }[] = [
  { value: '.', text: 'point' },
  { value: ',', text: 'comma' },
];

export const roles: readonly { value: TraceRole; text: string }[] = [
  { value: 'time', text: 'time' },
  { value: 'distance', text: 'distance' },
  { value: 'speed', text: 'speed' },
  { value: 'lap', text: 'lap' },
  { value: 'slope', text: 'slope' },
  { value: 'altitude', text: 'altitude' },
  { value: 'acceleration', text: 'acceleration' },
  { value: 'front brake pressure', text: 'front pressure' },
  { value: 'rear brake pressure', text: 'rear pressure' },
];

export const lapsBy: readonly { value: LapsBy; text: string }[] = [
  { value: 'column', text: 'the column of laps' },
  { value: 'distance', text: 'the distance that returns to the start' },
  { value: 'times', text: 'times that I give' },
  { value: 'none', text: 'nothing: the whole file is one lap' },
];

/** Three figures at most: "0.31", "12.4", "287". */
export function figures(value: number): string {
  const size = Math.abs(value);
  return grouped(value, digitsOf(value, size >= 100 ? 0 : size >= 10 ? 1 : 2));
}

/** "13:53:20"; of a date the time of day. */
function timeOfDay(time_s: number): string {
  const all = Math.floor(((time_s % 86_400) + 86_400) % 86_400);
  return [all / 3600, (all / 60) % 60, all % 60]
    .map((part) => String(Math.floor(part)).padStart(2, '0'))
    .join(':');
}

/** "0 to 287 km/h", "13:53:20 to 13:54:58" */
export function extentOf({ low, high, unit }: TraceColumn): string {
  if (!Number.isFinite(low) || !Number.isFinite(high)) return 'no numbers';
  if (unit === 'hh:mm:ss' || unit === 'date and time') return `${timeOfDay(low)} to ${timeOfDay(high)}`;
  const range = low === high ? `always ${figures(low)}` : `${figures(low)} to ${figures(high)}`;
  return unit ? `${range}${NBSP}${unit}` : range;
}

/** "5 123 m" or "3.183 mi": a lap is never counted in feet. */
export const lapLength = (length_m: number): string =>
  unitName('m') === 'm' ? `${grouped(length_m)}${NBSP}m` : withUnit(length_m / 1000, 'km', 3);

/** "1:36.4, 5 123 m" */
export const lapSize = (lap: TraceLap): string =>
  `${clockTime(lap.duration_s, 1)}, ${lapLength(lap.length_m)}`;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** "990 rows over 1:36.4 min and 5 123 m, one every 0.1 s" */
export function fileSize({ rows, laps, duration_s, meanInterval_s }: UnderstoodTrace): string {
  const length_m = sum(laps.map((lap) => lap.length_m));
  const over = laps.length > 0 ? ` over ${clockTime(duration_s, 1)} min and ${lapLength(length_m)}` : '';
  const every = meanInterval_s > 0 ? `, one every ${figures(meanInterval_s)}${NBSP}s` : '';
  return `${grouped(rows)} rows${over}${every}`;
}

/** What was set right, and why a unit is not the one that the file states. */
export const setRight = ({ mended, columns }: UnderstoodTrace): string[] => [
  ...mended,
  ...columns.flatMap(({ name, unitReason }) => (unitReason ? [`${name}: ${unitReason}`] : [])),
];

/** The first lines of many, the others, and how many those are; a reader that stopped listing ends with "and 3 more". */
export function firstOf(
  lines: readonly string[],
  most: number,
): { first: readonly string[]; others: readonly string[]; more: number } {
  const unlisted = /^and (\d+) more$/.exec(lines.at(-1) ?? '');
  const others = lines.slice(most);
  return {
    first: lines.slice(0, most),
    others,
    more: others.length + (unlisted ? Number(unlisted[1]) - 1 : 0),
  };
}

/** "One file is read at a time: a.csv is read, b.csv and c.csv are not." */
export function oneAtATime(name: string, others: readonly string[]): string {
  if (others.length === 0) return '';
  const list = [others.slice(0, -1).join(', '), others.at(-1)].filter(Boolean).join(' and ');
  return `One file is read at a time: ${name} is read, ${list} ${others.length > 1 ? 'are' : 'is'} not.`;
}

/** A cell of the file; a negative number has a true minus sign. */
export const shownCell = (cell: string): string => cell.replace(/^-(?=[\d.])/, '−');

/** What the stint is run on: the file, and which lap where there are several. */
export function traceName(name: string, { laps, lap }: UnderstoodTrace): string {
  const chosen = lap === null ? undefined : laps[lap];
  return chosen && laps.length > 1 ? `${name}, lap ${chosen.lap}` : name;
}

/** "25 Nov" */
export const dayOf = (at_ms: number): string =>
  new Date(at_ms).toLocaleDateString('en-GB', { day: 'numeric', month: 'short' });

/** What a screen reader hears while a file is read and when it is. */
export function news(reader: {
  name: string;
  isBusy: boolean;
  failure: string;
  problems: readonly string[];
  others: readonly string[];
  reading: { understood: UnderstoodTrace | null } | null;
}): string {
  if (reader.isBusy)
    return [`Reading ${reader.name}.`, oneAtATime(reader.name, reader.others)].filter(Boolean).join(' ');
  const understood = reader.reading?.understood;
  if (reader.failure || !understood) return '';
  if (understood.question) return 'Read. One question is open.';
  if (reader.problems.length > 0) return 'Read, with problems.';
  const lap = understood.lap === null ? undefined : understood.laps[understood.lap];
  return `Read: ${grouped(understood.rows)} rows, ${lap ? `lap ${lap.lap}, ${lapSize(lap)}` : 'no lap'}.`;
}
