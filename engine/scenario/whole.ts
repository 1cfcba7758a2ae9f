/** What a scenario file holds, of whatever version or of the catalogue, as a checked scenario; or all that is wrong with it. */
import { keysUnknown } from './keys.ts';
import { assembled, isCatalogueFile } from './library.ts';
import { migrated } from './migrate.ts';
import { parseScenario } from './parse.ts';
import { problem, type Problem } from './problem.ts';
import type { Scenario } from './schema.ts';
import { isTree, valueAt } from './tree.ts';

export type Whole =
  /** What was changed in a file of an earlier version, in words. */
  { ok: true; scenario: Scenario; changed: readonly string[] } | { ok: false; problems: Problem[] };

/** Keys that no scenario has are problems here: nobody would read them. */
export function wholeScenario(file: unknown, name: string): Whole {
  const put = together(file, name);
  if (!put.ok) return put;
  const brought = migrated(put.input);
  if (!brought.ok) return brought;
  const { input, changed } = brought;
  const parsed = parseScenario(input);
  const unknown = isTree(input)
    ? keysUnknown(input).map((key) => problem(key, valueAt(input, key), 'a key of the scenario'))
    : [];
  if (unknown.length > 0 || !parsed.ok)
    return { ok: false, problems: [...unknown, ...(parsed.ok ? [] : parsed.problems)] };
  return { ok: true, scenario: parsed.scenario, changed };
}

/** With the car and the circuit that a file of the catalogue names. */
function together(
  file: unknown,
  name: string,
): { ok: true; input: unknown } | { ok: false; problems: Problem[] } {
  if (!isCatalogueFile(file)) return { ok: true, input: file };
  try {
    return { ok: true, input: assembled(file) };
  } catch (error) {
    const expected = 'a car and a circuit of the library';
    const found = problem('scenario', name, expected, (error as Error).message);
    return { ok: false, problems: [{ ...found, value: `'${name}'` }] };
  }
}
