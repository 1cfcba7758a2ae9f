/** A column that a stint can do without, before and after it is judged. */
import type { TraceRole } from '../circuit/understood.ts';

export type ExtraRole = Exclude<TraceRole, 'time' | 'distance' | 'speed' | 'lap'>;

export interface ExtraColumn {
  role: ExtraRole;
  name: string;
  /** In its own unit, over the rows that are used. */
  values: Float64Array;
  stated: string;
  chosen?: string | undefined;
}

export interface Extra {
  unit: string;
  reason: string;
  /** In SI over the rows that are used, NaN where there is nothing; null: not used. */
  si: Float64Array | null;
  mended: string[];
}

export const unused = (unit: string, name: string, why: string): Extra => ({
  unit,
  reason: '',
  si: null,
  mended: [`${name} is not used: ${why}`],
});
