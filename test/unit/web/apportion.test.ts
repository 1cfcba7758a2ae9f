import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apportioned } from '../../../web/display/apportion.ts';

const sum = (values: number[]): number => values.reduce((total, value) => total + value, 0);
const parts = fc.array(fc.double({ min: 0, max: 1e9, noNaN: true }), { minLength: 1, maxLength: 9 });
const whole = fc.integer({ min: 0, max: 10_000 });

describe('parts that are rounded to add up', () => {
  it('make the whole, none off by a unit, none negative', () => {
    fc.assert(
      fc.property(parts, whole, (values, total) => {
        fc.pre(sum(values) > 1e-3);
        const units = apportioned(values, total);
        expect(sum(units)).toBe(total);
        units.forEach((unit, i) => {
          expect(Number.isInteger(unit) && unit >= 0).toBe(true);
          expect(Math.abs(unit - (values[i]! / sum(values)) * total)).toBeLessThan(1 + 1e-6);
        });
      }),
      { numRuns: 2000 },
    );
  });

  it('keep their order: none is printed above one that is larger', () => {
    fc.assert(
      fc.property(parts, whole, (values, total) => {
        fc.pre(sum(values) > 1e-3);
        const units = apportioned(values, total);
        values.forEach((value, i) => {
          const larger = units.filter((_, j) => values[j]! > value);
          expect(Math.min(...larger, Infinity)).toBeGreaterThanOrEqual(units[i]!);
        });
      }),
      { numRuns: 2000 },
    );
  });

  it('give what is missing to those that rounding took most from', () => {
    expect(apportioned([1, 1, 1], 100)).toEqual([34, 33, 33]);
    expect(apportioned([0.6, 0.3, 0.1], 4)).toEqual([3, 1, 0]);
  });

  it('are nothing where there is nothing', () => {
    expect(apportioned([0, 0], 100)).toEqual([0, 0]);
    expect(apportioned([], 100)).toEqual([]);
  });
});
