import type { Scenario } from './schema.ts';
import { isTree } from './tree.ts';

/** Whether nobody said where a window comes from, at any corner: what follows from it is not for use on a car. */
export const isExampleWindow = ({ brakes, sides }: Pick<Scenario, 'brakes' | 'sides'>): boolean =>
  [brakes.front, brakes.rear, ...Object.values(sides)]
    .map(sourceOf)
    .some((source) => source !== null && isNobody(source));

/** null where a side has none of its own. */
function sourceOf(brake: unknown): string | null {
  const window = isTree(brake) ? brake['window'] : null;
  const source = isTree(window) ? window['source'] : null;
  return typeof source === 'string' ? source : null;
}

/** Nothing, an example, or a word for nobody. */
const isNobody = (source: string): boolean =>
  /^\s*example\b/i.test(source) || !/\p{L}/u.test(source) || NOBODY.test(source.trim());
const NOBODY = /^(none|nobody|no one|unknown|not known|n\/?a|tbd|tbc|guess(ed)?)\W*$/i;
