/** Which column is what: as a person said, by its name, or, in a file without names, by its values. */
import type { TraceChoices, TraceRole } from '../circuit/understood.ts';
import type { Header } from './header.ts';
import type { Columns } from './read-columns.ts';
import { isLetter, plainName, roleNamed } from './role-names.ts';
import { correlation, differences, quantile, rangeOf } from './statistics.ts';
import { unitNamed } from './units.ts';

export type Roles = readonly (TraceRole | null)[];

/** Ranks of names from which a column of times must be seen to rise: 'lap time' may be one number a lap. */
const DOUBTFUL_RANK = 3;
/** A column without a number gives way to every other. */
const LAST_RANK = 10;
/** Share of rows in which a time or a distance rises. */
const RISING = 0.5;
/** Share of rows in which it may fall: at the end of a lap, or where a receiver wanders. */
const FALLING = 0.02;
/** Speeds in any of their units. */
const SPEED = { most: 400, least: 15 };
/** A lap's speeds spread over more than this share of the highest. */
const LETTER_RANGE = 0.15;
/** Steps of a speed from row to row, as a share of its range: what jumps more is no speed. */
const SMOOTH = 0.25;
/** Steps of a distance follow the speed, those of a time do not. */
const FOLLOWS = 0.5;

export const rolesOf = (header: Header, columns: Columns, choices: TraceChoices): Roles => {
  const said = (i: number): boolean => choices.roles?.[i] !== undefined;
  const roles: (TraceRole | null)[] = header.names.map((_, i) => choices.roles?.[i] ?? null);
  const isTaken = (role: TraceRole): boolean => roles.includes(role);
  if (header.isNamed) {
    for (const { i, role } of byName(header, columns)) if (!said(i) && !isTaken(role)) roles[i] = role;
    return roles;
  }
  const open = header.names.map((_, i) => i).filter((i) => !said(i) && columns.kinds[i] !== 'text');
  for (const [i, role] of byValues(columns, open)) if (!isTaken(role)) roles[i] = role;
  return roles;
};

function byName(header: Header, { kinds, values }: Columns): { i: number; role: TraceRole; rank: number }[] {
  return header.names
    .flatMap((name, i) => {
      const named = roleNamed(name);
      if (!named) return [];
      const { low, high } = rangeOf(values[i]!);
      const isDoubtful = named.role === 'time' && named.rank >= DOUBTFUL_RANK && !rises(values[i]!);
      const isEmpty = Number.isNaN(low) || (kinds[i] === 'text' && named.role !== 'lap');
      const isStill = named.role === 'speed' && low === 0 && high === 0;
      const isVolts =
        named.role === 'speed' && isLetter(plainName(name)) && !isLikelySpeed(header.units[i]!, values[i]!);
      if (isVolts) return [];
      if (isEmpty || isStill) return [{ i, role: named.role, rank: named.rank + LAST_RANK }];
      return isDoubtful || (named.role === 'time' && low === high) ? [] : [{ i, ...named }];
    })
    .sort((a, b) => a.rank - b.rank);
}

function rises(values: Float64Array): boolean {
  const steps = differences(values);
  if (steps.length === 0) return false;
  const up = steps.filter((step) => step > 0).length;
  const down = steps.filter((step) => step < 0).length;
  return up >= RISING * steps.length && down <= FALLING * steps.length;
}

/** Whether a column that is called by a letter is a speed: a battery's volts hardly move. */
function isLikelySpeed(unit: string, values: Float64Array): boolean {
  const [low, high] = [quantile(values, 0.05), quantile(values, 0.95)];
  const isOther = unit !== '' && unitNamed('speed', unit) === undefined;
  return !isOther && high >= SPEED.least && high <= SPEED.most && high - low > LETTER_RANGE * high;
}

function isSpeed(values: Float64Array): boolean {
  const { low, high } = rangeOf(values);
  if (!(low >= 0 && high <= SPEED.most && high >= SPEED.least) || rises(values)) return false;
  const steps = differences(values);
  const mean = steps.reduce((sum, step) => sum + Math.abs(step), 0) / Math.max(1, steps.length);
  return mean > 0 && mean < SMOOTH * (high - low);
}

/** One column of speeds; of what rises with it, distance is what rises faster at speed. Two speeds are nobody's guess. */
function byValues({ values, kinds }: Columns, open: readonly number[]): [number, TraceRole][] {
  const found: [number, TraceRole][] = [];
  const speeds = open.filter((i) => kinds[i] === 'number' && isSpeed(values[i]!));
  const speed = speeds.length === 1 ? speeds[0]! : undefined;
  if (speed !== undefined) found.push([speed, 'speed']);
  for (const i of open) {
    if (i === speed) continue;
    if (kinds[i] !== 'number') found.push([i, 'time']);
    else if (rises(values[i]!))
      found.push([i, followsSpeed(values[i]!, values[speed ?? -1]) ? 'distance' : 'time']);
  }
  return found;
}

function followsSpeed(values: Float64Array, speed: Float64Array | undefined): boolean {
  if (!speed) return false;
  const steps = values.subarray(1).map((value, i) => value - values[i]!);
  return correlation(steps, speed.subarray(1)) > FOLLOWS;
}
