/** What a tree has different from another, as little JSON as says it. */
import { isTree } from '../../engine/scenario/tree.ts';

/** Another value, in a list of one; nothing any more, as 0; or a table of what differs inside, by key or by place in a list. */
export type Difference = readonly [unknown] | 0 | { readonly [key: string]: Difference };

/** Of two trees of JSON. */
export function differenceOf(from: unknown, to: unknown): Difference {
  const inside = insideOf(from, to);
  const whole = [to] as const;
  if (!inside) return whole;
  // a list of numbers that all differ is shorter as it is
  return Array.isArray(to) && sizeOf(inside) > sizeOf(whole) ? whole : inside;
}

const sizeOf = (value: unknown): number => JSON.stringify(value).length;

/** Null where the two have no parts in common. */
function insideOf(from: unknown, to: unknown): Record<string, Difference> | null {
  const isLists = Array.isArray(from) && Array.isArray(to) && from.length === to.length;
  if (!isLists && !(isTree(from) && isTree(to))) return null;
  const [had, has] = [new Map(Object.entries(from)), new Map(Object.entries(to))];
  const gone = [...had.keys()].filter((key) => !has.has(key)).map((key) => [key, 0] as const);
  const other = [...has]
    .filter(([key, value]) => !had.has(key) || !isSame(had.get(key), value))
    .map(
      ([key, value]) => [key, had.has(key) ? differenceOf(had.get(key), value) : ([value] as const)] as const,
    );
  return Object.fromEntries([...gone, ...other]);
}

function isSame(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [had, has] = [Object.entries(a), new Map(Object.entries(b))];
  return had.length === has.size && had.every(([key, value]) => has.has(key) && isSame(value, has.get(key)));
}

/** The tree that differs from another by this. Throws on what is no difference from it. */
export function differing(from: unknown, difference: unknown): unknown {
  if (Array.isArray(difference) && difference.length === 1) return difference[0] as unknown;
  if (!isTree(difference)) throw new Error('not a difference');
  if (Array.isArray(from)) {
    const list = from as unknown[];
    const isPlace = (key: string): boolean => Object.hasOwn(list, key);
    if (!Object.keys(difference).every(isPlace)) throw new Error('no such place in the list');
    return list.map((item, i) => (Object.hasOwn(difference, i) ? differing(item, difference[i]) : item));
  }
  if (!isTree(from)) throw new Error('nothing to differ from');
  const values = new Map(Object.entries(from));
  for (const [key, own] of Object.entries(difference)) {
    if (own === 0) values.delete(key);
    else values.set(key, differing(values.get(key), own));
  }
  return Object.fromEntries(values);
}
