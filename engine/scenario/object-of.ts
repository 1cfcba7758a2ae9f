import * as v from 'valibot';
import { isTree, type Tree } from './tree.ts';

/** An object that has no other keys: a forecast under a misspelt key would be a forecast that nobody reads. */
export const objectOf = <const T extends v.ObjectEntries>(what: string, entries: T) =>
  v.pipe(
    v.custom<Tree>(isTree, 'an object'),
    v.strictObject(entries, ({ expected }) =>
      expected === 'never' ? `a key of ${what}: ${Object.keys(entries).join(', ')}` : 'a value',
    ),
  );
