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
export function withValue(tree: unknown, key: string, value: unknown): unknown {
  const [part = '', ...rest] = key.split('.');
  const inner = rest.length === 0 ? value : withValue(valueAt(tree, part), rest.join('.'), value);
  if (Array.isArray(tree)) return tree.map((item, i) => (i === Number(part) ? inner : (item as unknown)));
  return { ...(isTree(tree) ? tree : {}), [part]: inner };
}

/** One tree laid over another: objects merge, anything else (lists too) replaces. */
export function layOver(base: unknown, over: unknown): unknown {
  if (!isTree(base) || !isTree(over)) return over;
  const merged: Tree = { ...base };
  for (const [key, value] of Object.entries(over))
    merged[key] = key in base ? layOver(base[key], value) : value;
  return merged;
}
