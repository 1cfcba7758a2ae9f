/** The columns that a stint can do without, over the whole log and in the lap that is used. */
import type { TraceColumns } from '../circuit/trace.ts';
import type { TraceRole } from '../circuit/understood.ts';
import { unused, type Extra, type ExtraRole } from './extra.ts';
import { extraOf, filledBetween, filledText } from './extras.ts';
import { mostGap, type JudgedLap } from './judge-laps.ts';
import { lapColumns, type MotionLog } from './motion-log.ts';
import { badCells } from './read-motion.ts';
import { chosenUnit, isSaid, statedUnit, type Sources } from './sources.ts';
import { unitsOf } from './units.ts';
import { count, joined } from './words.ts';

const EXTRAS: readonly [ExtraRole, Exclude<keyof TraceColumns, 'time_s' | 'distance_m' | 'speed_mps'>][] = [
  ['slope', 'slope'],
  ['altitude', 'height_m'],
  ['acceleration', 'accel_mps2'],
  ['front brake pressure', 'brakeFront_Pa'],
  ['rear brake pressure', 'brakeRear_Pa'],
];

export interface UsedExtra extends Extra {
  at: number;
  key: (typeof EXTRAS)[number][1];
}

export function extrasFor(
  sources: Sources,
  index: Partial<Record<TraceRole, number>>,
  log: MotionLog,
): UsedExtra[] {
  const { header, columns } = sources;
  return EXTRAS.flatMap(([role, key]) => {
    const at = index[role];
    if (at === undefined) return [];
    const name = header.names[at]!;
    const values = Float64Array.from(log.kept, (row) => columns.values[at]![row]!);
    const stated = statedUnit(sources, at);
    const chosen = chosenUnit(sources, at);
    const isUnknown = header.units[at] !== '' && !stated && !chosen && !isSaid(sources, at);
    const extra = isUnknown
      ? unused('', name, `its unit '${header.units[at]}' is none of ${joined(unitsOf(role), 'or')}`)
      : extraOf({ role, name, values, stated, chosen }, log);
    const [first, ...others] = badCells(columns, at, name);
    const spoilt = first ? [`${name}: ${count(others.length + 1, 'cell')} left out; ${first.text}`] : [];
    return [{ ...extra, at, key, mended: [...spoilt, ...extra.mended] }];
  });
}

/** The lap in SI; a column with a hole in it is left out, for a hole is not bridged. */
export function columnsOfLap(
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
