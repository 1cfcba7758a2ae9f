/** What a safe span stands on: all of a scenario but how its mouths are blanked now, which is what the span is about. */
import type { Scenario } from '../../engine/index.ts';

/** Whether a span found for one scenario holds for the other. */
export function isSameGround(a: Scenario, b: Scenario): boolean {
  if (a === b) return true;
  return isSame(groundOf(a), groundOf(b));
}

/** Whether what was drawn for its candidates holds as well. */
export const isSameDoubtedGround = (a: Scenario, b: Scenario): boolean =>
  isSameGround(a, b) && isSame(a.doubt, b.doubt);

/** Where a side has a blanking of its own, it matters whether it equals the other side's. */
function groundOf(scenario: Scenario): object {
  const { name: _name, purpose: _purpose, doubt: _doubt, blanking_pct, ...ground } = scenario;
  const { front: _front, rear: _rear, ...ownSides } = blanking_pct;
  const hasOwn = Object.values(ownSides).some((value) => value !== undefined);
  return { ...ground, blanking_pct: hasOwn ? blanking_pct : null };
}

/** Whether two scenarios differ in nothing but these parts. */
export const isSameBut =
  (...parts: (keyof Scenario & string)[]) =>
  (a: Scenario, b: Scenario): boolean => {
    const rest = (of: Scenario): object =>
      Object.fromEntries(Object.entries(of).filter(([key]) => !parts.some((part) => part === key)));
    return a === b || isSame(rest(a), rest(b));
  };

function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) && Array.isArray(b)) {
    // a measured lap has ten thousand values, and this runs for every frame of a drag
    return a.length === b.length && a.every((value, i) => isSame(value, b[i]));
  }
  const [left, right] = [a as Record<string, unknown>, b as Record<string, unknown>];
  const keys = Object.keys(left);
  return (
    keys.length === Object.keys(right).length &&
    keys.every((key) => Object.hasOwn(right, key) && isSame(left[key], right[key]))
  );
}
