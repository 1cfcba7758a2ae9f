/** Of the candidates for an axle's panels those that can be cut: a plate with a hole or slots covers a rim and bars at least. */
import { canBeMade } from '../duct/blank-keys.ts';
import { leastBlanking } from '../duct/least-blanking.ts';
import type { Scenario } from '../scenario/schema.ts';
import { cornersOf } from '../stint/corners.ts';
import type { AxleTables } from './panel-table.ts';

export interface Cuttable {
  tables: AxleTables;
  /** An open mouth first. */
  candidates: number[];
  least_pct: number;
}

export function cuttable(scenario: Scenario, tables: AxleTables, candidates: readonly number[]): Cuttable {
  const least_pct = leastOf(scenario, tables.axle);
  const kept = candidates.flatMap((pct, i) => (canBeMade(pct, least_pct) ? [i] : []));
  const sides = tables.sides.map((side) => ({
    ...side,
    rows: side.rows.map((row) => kept.map((i) => row[i]!)),
  }));
  return { tables: { ...tables, sides }, candidates: kept.map((i) => candidates[i]!), least_pct };
}

/** On both sides [%] */
function leastOf(scenario: Scenario, axle: AxleTables['axle']): number {
  const ducts = cornersOf(scenario).flatMap(({ axle: at, brake: { duct } }) =>
    at === axle && duct ? [duct] : [],
  );
  return Math.max(...ducts.map((duct) => leastBlanking(duct)));
}
