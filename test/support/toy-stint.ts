/** The shipped stint cut short and judged early, with the doubts a test wants. */
import type { Changes } from '../../engine/scenario/override.ts';
import { checkScenario } from '../../engine/scenario/parse.ts';
import { problemLine } from '../../engine/scenario/problem.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import { changed, withPhases } from './stints.ts';

export type Ranges = Record<string, readonly [low: number, high: number]>;

/** Three push laps, the last two counted, with nothing in doubt but these ranges. */
export function toyStint(ranges: Ranges, changes: Changes = {}): Scenario {
  const early = { 'brakes.front.window.from_lap': 2, 'brakes.rear.window.from_lap': 2 };
  const warm = { 'initial.front.disc_C': 450, 'initial.rear.disc_C': 400 };
  const short = withPhases([{ kind: 'push', laps: 3 }], 3);
  return doubting(changed({ ...early, ...warm, ...changes }, short), ranges);
}

export function doubting(scenario: Scenario, ranges: Ranges): Scenario {
  const doubt = Object.fromEntries(
    Object.entries(ranges).map(([key, [low, high]]) => [key, { low, high, reason: 'for a test' }]),
  );
  const checked = checkScenario({ ...scenario, doubt });
  if (!checked.ok) throw new Error(checked.problems.map(problemLine).join('\n'));
  return checked.scenario;
}
