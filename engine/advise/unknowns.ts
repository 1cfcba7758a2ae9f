/** What a scenario says it does not know, and the scenario as it would be if that were so or so. */
import { fieldAt, valueAt } from '../scenario/keys.ts';
import { withChanges, type Changes } from '../scenario/override.ts';
import { checkScenario } from '../scenario/parse.ts';
import { problemLine } from '../scenario/problem.ts';
import type { Scenario } from '../scenario/schema.ts';
import type { Axle } from '../stint/result.ts';

/** A doubted value of the scenario. */
export interface Unknown {
  key: string;
  low: number;
  likely: number;
  high: number;
  reason: string;
}

/** All that is doubted and there. A value beyond its own range widens it: whoever set it knows more than the range. */
export function unknownsOf(scenario: Scenario): Unknown[] {
  return Object.entries(scenario.doubt).flatMap(([key, { low, high, reason }]) => {
    const likely = valueAt(scenario, key);
    if (typeof likely !== 'number') return [];
    return [{ key, low: Math.min(low, likely), likely, high: Math.max(high, likely), reason }];
  });
}

/** The axle that alone feels a value; null where both may. */
export function axleOf(key: string): Axle | null {
  const [, axle] = /^brakes\.(front|rear)\./.exec(key) ?? [];
  return (axle as Axle | undefined) ?? null;
}

/**
 * The scenario with doubted values as given. What a side or a phase has of its own under the same key moves by the same
 * difference: it was measured or guessed from the same ground. Throws where the whole does not fit together.
 */
export function supposing(scenario: Scenario, values: readonly (readonly [Unknown, number])[]): Scenario {
  const changes: Record<string, number> = {};
  for (const [{ key, likely }, value] of values) {
    changes[key] = value;
    for (const own of ownKeys(scenario, key)) {
      changes[own] = within(own, (valueAt(scenario, own) as number) + value - likely);
    }
  }
  const { phases } = scenario.stint;
  const changed = withChanges(scenario, changes);
  const moved = phases.map((phase) => ({ ...phase, ...settings(phase, values) }));
  const checked = checkScenario({ ...changed, stint: { ...changed.stint, phases: moved } });
  if (!checked.ok) throw new Error(checked.problems.map(problemLine).join('; '));
  return checked.scenario;
}

/** Where a side of the axle has its own value in place of the axle's. */
function ownKeys(scenario: Scenario, key: string): string[] {
  const axle = axleOf(key);
  if (!axle) return [];
  const rest = key.slice(`brakes.${axle}.`.length);
  const sides = ['left', 'right'].map((side) => `sides.${axle}_${side}.${rest}`);
  return sides.filter((own) => typeof valueAt(scenario, own) === 'number');
}

type Phase = Scenario['stint']['phases'][number];

/** What a phase sets, moved along; nothing where it sets nothing that is doubted. */
function settings({ set = {} }: Phase, values: readonly (readonly [Unknown, number])[]): { set?: Changes } {
  const moved = values.flatMap(([{ key, likely }, value]) => {
    const own = set[key];
    return typeof own === 'number' ? [[key, within(key, own + value - likely)] as const] : [];
  });
  return moved.length === 0 ? {} : { set: { ...set, ...Object.fromEntries(moved) } };
}

function within(key: string, value: number): number {
  const { min = -Infinity, max = Infinity } = fieldAt(key) ?? {};
  return Math.min(max, Math.max(min, value));
}
