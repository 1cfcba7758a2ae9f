/** Arbitrary values of the scenario's fields, over the whole range that the schema gives each. */
import fc from 'fast-check';
import { fieldAt } from '../../engine/scenario/keys.ts';

/** How finely a range is divided; both ends are among the values, and fast-check tries them more often than others. */
const PARTS = 1000;

/** A number from `low` to `high`, evenly: `fc.double` would take nearly all of a range that begins at 0 from next to 0. */
export const between = (low: number, high: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: PARTS }).map((part) => Math.min(high, low + (part / PARTS) * (high - low)));

/** The range of a field by its dotted key; throws on a key without one. */
export function rangeOf(key: string): [min: number, max: number] {
  const { min, max } = fieldAt(key) ?? {};
  if (min === undefined || max === undefined) throw new Error(`no range: ${key}`);
  return [min, max];
}

export const within = (key: string): fc.Arbitrary<number> => between(...rangeOf(key));

/** A value inside the range of a field. */
export function clamped(key: string, value: number): number {
  const [min, max] = rangeOf(key);
  return Math.min(max, Math.max(min, value));
}

type Arbitraries = Record<string, fc.Arbitrary<unknown>>;

/** A number for every number of one part of a scenario, such as `brakes.front.bell`, so that a new field comes along by itself. */
export function numbersOf(part: string, sample: object): Arbitraries {
  const names = Object.entries(sample).filter(([, value]) => typeof value === 'number');
  return Object.fromEntries(names.map(([name]) => [name, within(`${part}.${name}`)]));
}

/** One part of a scenario: every number over its range, and what is told of the rest. */
export const partOf = (part: string, sample: object, rest: Arbitraries = {}): fc.Arbitrary<object> =>
  fc.record({ ...numbersOf(part, sample), ...rest });

/** A value or, as often as not, none. */
export const orNone = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(value, { freq: 2 });

/** One time in four a value, else something plain. */
export const seldom = <T, P>(value: fc.Arbitrary<T>, plain: P): fc.Arbitrary<T | P> =>
  fc.oneof({ arbitrary: fc.constant(plain), weight: 3 }, { arbitrary: value, weight: 1 });
