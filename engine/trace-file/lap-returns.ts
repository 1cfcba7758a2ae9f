/** A lap's own time or distance beside the file's: where it returns to nothing, a lap starts. */
import { isReset, farthestOf } from './distance-line.ts';
import type { MotionLog } from './motion-log.ts';
import { plainName, roleNamed } from './role-names.ts';
import type { Sources } from './sources.ts';

const OF_A_LAP = /\b(lap|laps|runden?|rundenzeit|tour|vuelta|giro)\b/;
/** Between laps it rises in this share of the rows. */
const RISING = 0.5;

/** Indices into the log's rows at which an unused column returns; none where no such column does. */
export function returnsIn({ header, columns, roles }: Sources, { kept }: MotionLog): number[] {
  for (const [i, name] of header.names.entries()) {
    if (roles[i] || columns.kinds[i] === 'text') continue;
    if (!OF_A_LAP.test(plainName(name)) && roleNamed(name)?.role !== 'distance') continue;
    const values = Float64Array.from(kept, (row) => columns.values[i]![row]!);
    const farthest = farthestOf(values);
    const starts: number[] = [];
    let rising = 0;
    for (let k = 1; k < values.length; k++) {
      if (values[k]! > values[k - 1]!) rising += 1;
      if (isReset(values, farthest, k, k - 1)) starts.push(k);
    }
    if (starts.length > 0 && rising >= RISING * values.length) return starts;
  }
  return [];
}
