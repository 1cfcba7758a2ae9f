/** Remembers the last few results of a pure function by the slice of its input that it reads. */

/**
 * The same function with a memory of `size` results. Two inputs are the same when the slices that `keyOf` names are
 * the same JSON: what a worker receives has lost its identity, so identity cannot serve.
 */
export function memo<In, Out>(
  size: number,
  keyOf: (input: In) => unknown[],
  make: (input: In) => Out,
): (input: In) => Out {
  const known = new Map<string, Out>();
  return (input) => {
    const key = keyOf(input).map(textOf).join();
    const found = known.get(key);
    if (found !== undefined) {
      known.delete(key);
      known.set(key, found);
      return found;
    }
    const made = make(input);
    known.set(key, made);
    if (known.size > size) known.delete(known.keys().next().value!);
    return made;
  };
}

const numbers = new WeakMap<object, number>();
let last = 0;

/** A number of its own for each object, to be part of a key where one object stands for all that are alike. */
export function identity(of: object): number {
  const known = numbers.get(of);
  if (known !== undefined) return known;
  numbers.set(of, ++last);
  return last;
}

/** Parts of a scenario are never mutated and most stay the same objects, so each is written once; the text goes with its object. */
const texts = new WeakMap<object, string>();

function textOf(part: unknown): string {
  if (typeof part !== 'object' || part === null) return JSON.stringify(part) ?? '';
  const known = texts.get(part);
  if (known !== undefined) return known;
  const text = JSON.stringify(part);
  texts.set(part, text);
  return text;
}
