/** What a scenario says it does not know. */
import { valueAt } from '../scenario/tree.ts';
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
