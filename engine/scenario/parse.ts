/** From anything that claims to be a scenario to a checked one, or to the full list of what is wrong with it. */
import * as v from 'valibot';
import { fieldAt } from './keys.ts';
import { filled, isTree } from './tree.ts';
import { defaultScenario } from './default-scenario.ts';
import { problem, tooHotHint, type Problem } from './problem.ts';
import { checkTogether } from './rules.ts';
import { scenarioSchema, type Scenario } from './schema.ts';

export type Parsed = { ok: true; scenario: Scenario } | { ok: false; problems: Problem[] };

/**
 * Checks a scenario. What it leaves out is taken from the default scenario; keys it has beyond the schema are kept, all in its order.
 * Never throws: every problem comes back with its key, its value and what was expected.
 */
export function parseScenario(input: unknown): Parsed {
  if (!isTree(input)) return { ok: false, problems: [problem('scenario', input, 'a JSON object')] };
  const base = defaultScenario();
  // doubts belong to one car: those of the default car are no gap to fill in another's
  return checkScenario(filled(input, 'doubt' in input ? { ...base, doubt: {} } : base));
}

/** Checks a scenario that is complete already, such as one made by an override. */
export function checkScenario(input: unknown): Parsed {
  const checked = v.safeParse(scenarioSchema, input);
  const inFields = checked.success ? [] : checked.issues.map(toProblem);
  const broken = new Set(inFields.map(({ key }) => key.split('.')[0]!));
  const problems = [...inFields, ...checkTogether(checked.output as Scenario, broken)];
  if (!checked.success || problems.length > 0) return { ok: false, problems };
  // what was given, not the copy that the check made: a part that a change left alone stays the same object
  return { ok: true, scenario: input as Scenario };
}

function toProblem(issue: v.BaseIssue<unknown>): Problem {
  const key = (issue.path ?? []).map((part) => String(part.key)).join('.');
  return problem(key, issue.input, expectedBy(issue), hintFor(key, issue.input));
}

/** The usual slips: kelvin or Fahrenheit for Celsius, a share for a percentage and the other way round. */
function hintFor(key: string, value: unknown): string {
  if (typeof value === 'string' && value.trim() !== '' && Number.isFinite(Number(value)))
    return 'a number in quotes?';
  const max = fieldAt(key)?.max;
  if (typeof value !== 'number' || max === undefined) return '';
  if (key.endsWith('_C') && value > max) return tooHotHint(value);
  if (max === 1 && value > 1 && value <= 100) return 'a percentage? give a share from 0 to 1';
  return '';
}

/** Every field states its own range as its message; only an object in the wrong place has none. */
const expectedBy = (issue: v.BaseIssue<unknown>): string =>
  issue.type === 'loose_object' ? 'an object' : issue.message;
