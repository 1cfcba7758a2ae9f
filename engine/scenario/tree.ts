/** A scenario as a plain tree of values under dotted keys. Knows no schema: what computes needs none. */

export type Tree = Record<string, unknown>;

export const isTree = (value: unknown): value is Tree =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The value at a dotted key, or undefined. */
export function valueAt(tree: unknown, key: string): unknown {
  return key.split('.').reduce<unknown>((at, part) => {
    if (Array.isArray(at)) return at[Number(part)] as unknown;
    return isTree(at) ? at[part] : undefined;
  }, tree);
}

/** A copy of the tree with one value changed; everything off the path is shared, nothing is mutated. */
export const withValue = (tree: unknown, key: string, value: unknown): unknown =>
  withValues(tree, [[key, value]]);

/** A list has the items it has: what is put elsewhere in it goes nowhere. */
function put<T>(at: Tree, part: string, value: T): T {
  if (!Array.isArray(at) || part in at) at[part] = value;
  return value;
}

/** The same with many values changed: what lies on several of their paths is copied once. */
export function withValues(
  tree: unknown,
  values: readonly (readonly [key: string, value: unknown])[],
): unknown {
  if (values.length === 0) return tree;
  const copies = new Set<unknown>();
  const copyOf = (at: unknown): Tree => {
    if (copies.has(at)) return at as Tree;
    const copy = Array.isArray(at) ? [...(at as unknown[])] : { ...(isTree(at) ? at : {}) };
    copies.add(copy);
    return copy as Tree;
  };
  const root = copyOf(tree);
  for (const [key, value] of values) {
    const parts = key.split('.');
    const last = parts.pop() ?? '';
    let at = root;
    for (const part of parts) at = put(at, part, copyOf(at[part]));
    put(at, last, value);
  }
  return root;
}

/** One tree laid over another: objects merge, anything else (lists too) replaces. */
export function layOver(base: unknown, over: unknown): unknown {
  if (!isTree(base) || !isTree(over)) return over;
  const merged: Tree = { ...base };
  for (const [key, value] of Object.entries(over))
    merged[key] = key in base ? layOver(base[key], value) : value;
  return merged;
}

/** A tree with what it lacks taken from another: its own keys keep their order, and its lists are its own. */
export function filled(tree: unknown, from: unknown): unknown {
  if (!isTree(tree) || !isTree(from)) return tree;
  const own = Object.entries(tree).map(([key, value]) => [
    key,
    Object.hasOwn(from, key) ? filled(value, from[key]) : value,
  ]);
  const lacked = Object.entries(from).filter(([key]) => !Object.hasOwn(tree, key));
  return Object.fromEntries([...own, ...lacked]);
}
