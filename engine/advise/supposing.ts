/** A scenario as it would be if what it does not know were so or so. */
import { checkScenario, type Parsed } from '../scenario/parse.ts';
import { problemLine } from '../scenario/problem.ts';
import type { Scenario } from '../scenario/schema.ts';
import { supposed, type Supposed } from '../scenario/supposed.ts';
import type { Unknown } from './unknowns.ts';

/** How much of the way from the likely values is tried where the whole way leads to what cannot be. */
const PULLED = [1 / 2, 1 / 4, 1 / 8];

/**
 * The scenario with doubted values as given. Values that are possible one by one may not fit together, as a cheek and a
 * thickness: then all that is doubted of that part of the brake is pulled towards the likely, and at last left as it is there.
 */
export function supposing(scenario: Scenario, values: readonly (readonly [Unknown, number])[]): Scenario {
  const asked = checked(scenario, values);
  if (asked.ok) return asked.scenario;
  const parts = new Set(asked.problems.map(({ key }) => partOf(key)));
  const isAtFault = ([{ key }]: readonly [Unknown, number]): boolean => parts.has(partOf(key));
  for (const share of PULLED) {
    const pulled = checked(
      scenario,
      values.map((one) => {
        const [unknown, value] = one;
        return isAtFault(one) ? ([unknown, unknown.likely + share * (value - unknown.likely)] as const) : one;
      }),
    );
    if (pulled.ok) return pulled.scenario;
  }
  const without = checked(
    scenario,
    values.filter((one) => !isAtFault(one)),
  );
  if (!without.ok) throw new Error(without.problems.map(problemLine).join('; '));
  return without.scenario;
}

/** Without its doubts, which what is supposed need not fit any more. */
const checked = (scenario: Scenario, values: readonly Supposed[]): Parsed =>
  checkScenario({ ...supposed(scenario, values), doubt: {} });

/** The part of a brake that a key is of, the same for an axle and its sides; else the part of the scenario. */
function partOf(key: string): string {
  const [, axle, part] = /^(?:brakes|sides)\.(front|rear)(?:_left|_right)?\.(\w+)/.exec(key) ?? [];
  return axle ? `${axle} ${part}` : key.split('.')[0]!;
}
