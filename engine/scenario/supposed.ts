/** A scenario with other values in the place of those it doubts. */
import { fieldAt } from './keys.ts';
import { valueAt, withValues } from './tree.ts';
import type { Scenario } from './schema.ts';

/** A value of the scenario, and what it would be. */
export type Supposed = readonly [of: { key: string; likely: number }, value: number];

/**
 * The scenario with doubted values as given, unchecked. What a side or a phase has of its own under the same key moves by
 * the same difference, as far as the range of the key goes: it was measured or guessed from the same ground.
 */
export function supposed(scenario: Scenario, values: readonly Supposed[]): Scenario {
  const all = values.flatMap(([{ key, likely }, value]) => {
    const moved = (own: string): number => within(own, (valueAt(scenario, own) as number) + value - likely);
    return [...ownKeys(scenario, key).map((own) => [own, moved(own)] as const), [key, value] as const];
  });
  const moved = withValues(scenario, all) as Scenario;
  const phases = moved.stint.phases.map((phase) => ({ ...phase, ...settings(phase, values) }));
  return { ...moved, stint: { ...moved.stint, phases } };
}

type Side = keyof Scenario['sides'];

/** Where a side of the axle has its own value in place of the axle's. */
function ownKeys(scenario: Scenario, key: string): string[] {
  const [, axle, rest] = /^brakes\.(front|rear)\.(.+)$/.exec(key) ?? [];
  if (!axle) return [];
  const there = ([`${axle}_left`, `${axle}_right`] as Side[]).filter((side) => scenario.sides[side]);
  const sides = there.map((side) => `sides.${side}.${rest}`);
  return sides.filter((own) => typeof valueAt(scenario, own) === 'number');
}

type Phase = Scenario['stint']['phases'][number];

/** What a phase sets, moved along; nothing where it sets nothing that is doubted. */
function settings({ set = {} }: Phase, values: readonly Supposed[]): Pick<Phase, 'set'> {
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
