/** Values to put at dotted keys of a scenario. */
import type { Scenario } from './schema.ts';
import { withValue } from './tree.ts';

export type Value = number | boolean | string | null;
export type Changes = Readonly<Record<string, Value>>;

/** A new scenario with them in place, for changes whose keys and values were checked before. Nothing is mutated. */
export function withChanges(scenario: Scenario, changes: Changes): Scenario {
  return Object.entries(changes).reduce<unknown>(
    (at, [key, value]) => withValue(at, key, value),
    scenario,
  ) as Scenario;
}
