import { expect, it } from 'vitest';
import { withValue, withValues } from '../../engine/scenario/tree.ts';

const tree = { a: { b: 1, c: { d: 2 } }, list: [{ x: 1 }, { x: 2 }], other: { y: 3 } };

it('many values are put in at once as they are one after the other, and the later of two on a path holds', () => {
  const values = [
    ['a.c.d', 5],
    ['a.b', 6],
    ['list.1.x', 7],
    ['new.z', 8],
    ['a.c', { e: 9 }],
  ] as const;
  const given = structuredClone(tree);
  const oneByOne = values.reduce<unknown>((at, [key, value]) => withValue(at, key, value), tree);
  expect(withValues(tree, values)).toEqual(oneByOne);
  expect(oneByOne).toEqual({ ...tree, a: { b: 6, c: { e: 9 } }, list: [{ x: 1 }, { x: 7 }], new: { z: 8 } });
  expect(tree).toEqual(given);
});

it('what lies off the paths is shared, and of no values the tree is the same', () => {
  const changed = withValues(tree, [['a.b', 2]]) as typeof tree;
  expect(changed.other).toBe(tree.other);
  expect(changed.a.c).toBe(tree.a.c);
  expect(withValues(tree, [])).toBe(tree);
});

it('a value that was put in is not changed by a later one below it', () => {
  const given = { d: 1 };
  expect(
    withValues(tree, [
      ['a.c', given],
      ['a.c.d', 2],
    ]),
  ).toMatchObject({ a: { c: { d: 2 } } });
  expect(given).toEqual({ d: 1 });
});

it('a list does not grow', () => {
  expect(withValues(tree, [['list.5.x', 1]])).toEqual(tree);
});
