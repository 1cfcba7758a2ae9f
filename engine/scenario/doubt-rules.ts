/** What a scenario's doubts must agree with: a number that is there and the range it may have. */
import { fieldAt, isLeaf, misfit } from './keys.ts';
import { valueAt } from './tree.ts';
import { problem, type Problem } from './problem.ts';
import type { Scenario } from './schema.ts';
import { supposed } from './supposed.ts';

/**
 * One problem for each end that is wrong. That the value itself lies outside is none: whoever sets it beyond its range knows
 * more than the range, which then reaches as far as the value. A doubt about what the scenario leaves empty, such as a duct
 * that an axle does not have, sleeps.
 */
export function doubtProblems(scenario: Scenario): Problem[] {
  return Object.entries(scenario.doubt).flatMap(([key, { low, high }]) => {
    const likely = valueAt(scenario, key);
    const isNumber = typeof likely === 'number' || likely === null || likely === undefined;
    if (!isLeaf(key) || !isNumber)
      return [problem(`doubt.${key}`, key, 'the key of a number of the scenario')];
    if (fieldAt(key)?.whole)
      return [problem(`doubt.${key}`, key, 'the key of a number that need not be whole')];
    const ends = { low, high };
    const beyond = (['low', 'high'] as const).flatMap((end) => {
      const expected = misfit(key, ends[end]);
      return expected === null ? [] : [problem(`doubt.${key}.${end}`, ends[end], expected)];
    });
    if (beyond.length === 0 && low > high) return [problem(`doubt.${key}.low`, low, `at most high, ${high}`)];
    return beyond;
  });
}

/**
 * One problem for each end that does not fit the other values of the scenario, which must fit each other; between two ends
 * that do, all does. How several doubted values fit together is left to those who try them.
 *
 * @param rulesAt - what finds the disagreements that a value at a key may bring; null where none can be
 */
export function endProblems(
  scenario: Scenario,
  rulesAt: (key: string) => ((scenario: Scenario) => Problem[]) | null,
): Problem[] {
  return Object.entries(scenario.doubt).flatMap(([key, ends]) => {
    const likely = valueAt(scenario, key);
    const disagreements = rulesAt(key);
    if (typeof likely !== 'number' || !disagreements) return [];
    return (['low', 'high'] as const).flatMap((end) => {
      const value = ends[end];
      const [first] = disagreements(supposed(scenario, [[{ key, likely }, value]]));
      if (!first) return [];
      return [problem(`doubt.${key}.${end}`, value, `a value with which ${first.key} is ${first.expected}`)];
    });
  });
}
