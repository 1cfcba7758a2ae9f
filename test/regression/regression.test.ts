import { expect, it } from 'vitest';
import { textOf } from '../support/tree.ts';
import { watchedNow, type Watched } from './numbers.ts';

const accepted = JSON.parse(textOf('test/regression/accepted.json')) as Watched;
const now = watchedNow();

it('watches every shipped stint', () => expect(Object.keys(accepted)).toEqual(Object.keys(now)));

it.each(Object.keys(now))(
  '%s has not moved; if it should have, npm run regression:accept and read the diff',
  (id) => {
    expect(now[id]).toEqual(accepted[id]);
  },
);
