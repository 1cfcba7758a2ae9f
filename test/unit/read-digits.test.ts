import { describe, expect, it } from 'vitest';
import { readDigits } from '../support/examples.ts';

describe('reading the digits of an example', () => {
  it.each([
    ['5.8274', 5.8274, 0.5e-4],
    ['-0.50', -0.5, 0.5e-2],
    ['−3', -3, 0.5],
    ['1.81e-5', 1.81e-5, 0.5e-7],
    ['12_000 Pa', 12000, 0.5],
  ])('%s', (printed, value, tolerance) => {
    const digits = readDigits(printed);
    expect(digits?.value).toBeCloseTo(value, 12);
    expect((digits?.tolerance ?? 0) / tolerance).toBeCloseTo(1, 6);
  });

  it.each(['about 3', '[1, 2]', '1.2.3', ''])('refuses "%s"', (printed) => {
    expect(readDigits(printed)).toBeUndefined();
  });
});
