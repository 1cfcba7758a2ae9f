import { describe, expect, it } from 'vitest';
import { rootFalling } from '../../../engine/duct/bracketed-root.ts';

describe('the root of a falling function', () => {
  it.each([
    ['a line', (x: number) => 3 - x, 3],
    [
      'a square root with infinite slope at its zero',
      (x: number) => -Math.sign(x - 1) * Math.sqrt(Math.abs(x - 1)),
      1,
    ],
    ['a function flat around its zero', (x: number) => -((x - 2) ** 9), 2],
    ['a step', (x: number) => (x < 7.25 ? 1 : -1e-9), 7.25],
  ])('is found for %s', (_, f, root) => {
    expect(rootFalling(f, { low: -10, high: 30, tolerance: 1e-9 })).toBeCloseTo(root, 8);
  });

  it('never takes more than a few steps above bisection', () => {
    let calls = 0;
    const f = (x: number): number => (calls++, x < 7.25 ? 1 : -1e-12);
    rootFalling(f, { low: 0, high: 32, tolerance: 32 * 2 ** -31 });
    expect(calls).toBeLessThanOrEqual(2 + 30 + 1);
  });

  it('takes far fewer steps than bisection on a smooth function', () => {
    let calls = 0;
    const cube = (x: number): number => (calls++, 50 - x ** 3);
    expect(rootFalling(cube, { low: 0, high: 32, tolerance: 32 * 2 ** -41 })).toBeCloseTo(Math.cbrt(50), 9);
    expect(calls).toBeLessThan(20);
  });

  it.each([0.3, 1.1, 4.9, 6.2, 7.7])(
    'lies within the tolerance of where it is told to stop, for %d',
    (root) => {
      const step = (x: number): number => (x < root ? 1 : -1);
      expect(Math.abs(rootFalling(step, { low: 0, high: 8, tolerance: 0.5 }) - root)).toBeLessThanOrEqual(
        0.5,
      );
    },
  );

  // An end that lies on the root to the last digit must not end the search: the other is still far away.
  it('lies within the tolerance also where one end meets it first', () => {
    for (let root = -9.97; root < 30; root += 0.13) {
      const falling = (x: number): number => Math.exp(-x / 10) - Math.exp(-root / 10);
      const found = rootFalling(falling, { low: -10, high: 30, tolerance: 1e-11 });
      expect(Math.abs(found - root)).toBeLessThan(2e-11);
    }
  });

  it('is an end where the ends hold it or nothing crosses zero', () => {
    const bracket = { low: 1, high: 2, tolerance: 1e-9 };
    expect(rootFalling((x) => 1 - x, bracket)).toBe(1);
    expect(rootFalling((x) => 2 - x, bracket)).toBe(2);
    expect(rootFalling(() => 0, bracket)).toBe(1);
    expect(rootFalling(() => 1, bracket)).toBe(2);
  });
});
