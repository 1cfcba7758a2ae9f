/** Values to put at dotted keys of a scenario. */
import type { Scenario } from './schema.ts';
import { withValues } from './tree.ts';

export type Value = number | boolean | string | null;
export type Changes = Readonly<Record<string, Value>>;

/** A new scenario with them in place, for changes whose keys and values were checked before. Nothing is mutated. */
export const withChanges = (scenario: Scenario, changes: Changes): Scenario =>
  withValues(scenario, Object.entries(changes)) as Scenario;
