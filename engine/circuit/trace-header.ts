import { KMH_PER_MPS, MILE_M } from '../units.ts';
import { isBlank } from './trace-table.ts';
import type { TraceTable } from './trace-table.ts';

export type TraceRole = 'time' | 'distance' | 'speed' | 'lap' | 'slope' | 'altitude';

export interface TraceColumn {
  name: string;
  /** as understood; empty where none is stated or needed */
  unit: string;
  /** null: not used */
  role: TraceRole | null;
}

/** A column that is used: where it is and what one of its units is in SI. */
export interface UsedColumn extends TraceColumn {
  role: TraceRole;
  index: number;
  factor: number;
}

const HOUR_S = 3600;
const METRES_PER_KM = 1000;

const KMH = 1 / KMH_PER_MPS;
const MPH = MILE_M / HOUR_S;

/** Known units by role with their size in SI; the first is assumed where none is stated, except for speed. */
const UNITS: Record<TraceRole, Record<string, number>> = {
  time: { s: 1, sec: 1, seconds: 1, ms: 1e-3 },
  distance: { m: 1, km: METRES_PER_KM, metres: 1, meters: 1 },
  speed: { 'km/h': KMH, kmh: KMH, kph: KMH, mph: MPH, 'm/s': 1, mps: 1 },
  lap: { '': 1 },
  slope: { '%': 0.01, pct: 0.01 },
  altitude: { m: 1 },
};

const NAMES: readonly [TraceRole, RegExp][] = [
  ['time', /^(elapsed |lap |log )?(time|t|seconds)$/],
  ['distance', /^(lap )?(distance|dist|s|position)$/],
  ['speed', /^(car |vehicle |ground |gps |wheel )?(speed|velocity|v|vel)( car)?$/],
  ['lap', /^lap( no| nr| number|s)?$/],
  ['slope', /^(road )?(slope|grade|gradient)$/],
  ['altitude', /^(gps )?(altitude|alt|height|elevation)$/],
];

/** "Speed (km/h)", "speed [mph]" and "speed_kmh" in their two parts. */
function splitName(cell: string): { name: string; unit: string } {
  const bracketed = /^(.*?)\s*[([]\s*([^)\]]*?)\s*[)\]]\s*$/.exec(cell);
  if (bracketed) return { name: bracketed[1]!.trim(), unit: bracketed[2]! };
  const suffixed = /^(.+)_([a-z]+)$/i.exec(cell.trim());
  const isUnit = suffixed && Object.values(UNITS).some((known) => suffixed[2]!.toLowerCase() in known);
  return isUnit ? { name: suffixed[1]!, unit: suffixed[2]! } : { name: cell.trim(), unit: '' };
}

const roleOf = (name: string): TraceRole | null => {
  const plain = name
    .toLowerCase()
    .replace(/[_.\-\s]+/g, ' ')
    .trim();
  return NAMES.find(([, pattern]) => pattern.test(plain))?.[0] ?? null;
};

const unitCell = (cell: string): string => cell.replace(/[()[\]]/g, '').trim();

const isUnitRow = (row: readonly string[]): boolean => {
  const cells = row.map((cell) => unitCell(cell).toLowerCase());
  return cells.some((cell) => cell !== '' && Object.values(UNITS).some((known) => cell in known));
};

export interface TraceHeader {
  columns: TraceColumn[];
  used: UsedColumn[];
  problems: string[];
}

/** Names and units of the columns, from the one or two rows above the numbers. */
export function headerOf({ rows, firstData }: TraceTable): TraceHeader {
  const above = rows.slice(0, firstData).filter((row) => !isBlank(row));
  const width = rows[firstData]!.length;
  const units = above.length > 1 && isUnitRow(above.at(-1)!) ? above.at(-1)! : undefined;
  const names = units ? above.at(-2) : above.at(-1);
  if (!names || names.length < 2) {
    return { columns: [], used: [], problems: ['header: expected a row of column names above the numbers'] };
  }
  const problems: string[] = [];
  const used: UsedColumn[] = [];
  const columns = Array.from({ length: width }, (_, index): TraceColumn => {
    const { name, unit: ownUnit } = splitName(names[index] ?? '');
    const stated = unitCell(units?.[index] ?? '') || ownUnit;
    const role = roleOf(name);
    if (role === null || used.some((other) => other.role === role)) return { name, unit: stated, role: null };
    const known = UNITS[role];
    const unit = stated || (role === 'speed' ? '' : Object.keys(known)[0]!);
    const factor = known[unit.toLowerCase()];
    if (factor !== undefined) used.push({ name, unit, role, index, factor });
    else problems.push(`column ${name}: expected a unit of ${listed(known)}, got '${unit}'`);
    return { name, unit, role };
  });
  return { columns, used, problems: [...problems, ...missing(columns)] };
}

const listed = (known: Record<string, number>): string => Object.keys(known).join(', ');

function missing(columns: TraceColumn[]): string[] {
  const roles = new Set(columns.map(({ role }) => role));
  const names = columns.map(({ name }) => name).join(', ');
  const lacks: string[] = [];
  if (!roles.has('speed')) lacks.push(`header: expected a column named speed, got ${names}`);
  if (!roles.has('time') && !roles.has('distance')) {
    lacks.push(`header: expected a column named time or distance, got ${names}`);
  }
  return lacks;
}
