/** The stints that ship, each with its whole scenario, for lists of laws. */
import { shippedStint, stints } from '../../engine/scenario/library.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import type { StintResult } from '../../engine/stint/result.ts';

export const shipped: [id: string, scenario: Scenario][] = stints.map(({ id }) => [id, shippedStint(id)]);

/** Everything inside is frozen, so that a write anywhere throws. */
export function deepFreeze<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  Object.values(value).forEach(deepFreeze);
  return Object.freeze(value);
}

/** A result as text: equal text is equal in every bit, not only in value. */
export function bytesOf(result: StintResult): string {
  return JSON.stringify(result, (_, value: unknown) =>
    value instanceof Float64Array
      ? Buffer.from(value.buffer, value.byteOffset, value.byteLength).toString('base64')
      : value,
  );
}
