/** The one way to change a scenario: slider, command line, phase, panel, spread draw and correction all pass through here. */
import { withChanges, type Changes, type Value } from './changes.ts';
import { isLeaf, isNullable } from './keys.ts';
import { checkScenario, type Parsed } from './parse.ts';
import { problem, type Problem } from './problem.ts';
import type { Scenario } from './schema.ts';

export type { Changes, Value };

/** A new scenario with the values at dotted keys changed, or every problem with them. Nothing is mutated. */
export function override(scenario: Scenario, changes: Changes): Parsed {
  const unknown = unknownKeys(changes);
  if (unknown.length > 0) return { ok: false, problems: unknown };
  return checkScenario(withChanges(scenario, changes));
}

/** A problem for each key that names no single value of a scenario. */
export function unknownKeys(changes: Changes): Problem[] {
  return Object.entries(changes)
    .filter(([key]) => !isLeaf(key))
    .map(([key, value]) => problem(key, value, 'a key of the scenario that holds one value'));
}

/** The value a person typed for a key: `none` where nothing is allowed, true or false, a number, else text. */
export function valueFromText(key: string, text: string): Value {
  if (text === 'none' && isNullable(key)) return null;
  if (text === 'true') return true;
  if (text === 'false') return false;
  return text.trim() !== '' && Number.isFinite(Number(text)) ? Number(text) : text;
}
