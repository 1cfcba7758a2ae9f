import { describe, expect, it } from 'vitest';
import type { RangeUse } from '../../../engine/index.ts';
import { printed } from '../../../engine/said.ts';
import { leftRange } from '../../../engine/stint/notices.ts';
import { rangeWords, usedWords } from '../../../web/display/range-words.ts';

const use = (more: Partial<RangeUse>): RangeUse => ({
  law: 'a law',
  quantity: 'quantity',
  unit: '',
  low: 0,
  high: 1,
  source: 'somebody',
  from: 0.5,
  to: 0.5,
  left: false,
  ...more,
});

describe('what a run used of a range', () => {
  it('is one number where both ends print alike', () => {
    const still = use({ from: 0.59391, to: 0.59394, high: 0.2, left: true });
    expect(usedWords(still)).toBe('0.594');
    expect(printed(leftRange(still))).toContain('quantity 0.594 where');
    expect(usedWords(use({ from: 0.25, to: 0.75 }))).toBe('0.25 to 0.75');
  });

  it('has as many digits as it takes to see that it is left', () => {
    const barely = use({ unit: 'K', high: 130, from: 12, to: 130.04, left: true });
    expect(usedWords(barely)).toBe('12 to 130.04\u00a0K');
    expect(rangeWords(barely)).toBe('0 to 130\u00a0K');
    expect(printed(leftRange(barely))).toBe(
      'a law: quantity 12 to 130.04 K where the law holds from 0 to 130 K',
    );
    const below = use({ low: 4620, high: 1e5, from: 4619.6, to: 6161, left: true });
    expect(usedWords(below)).toBe('4\u00a0619.6 to 6\u00a0161');
  });

  it('ends with seven digits, and a large number keeps its power of ten', () => {
    const same = use({ high: 1e5, from: 5, to: 1e5 + 1e-6, left: true });
    expect(usedWords(same)).toBe('5 to 100\u00a0000');
    expect(printed(leftRange(use({ high: 1e5, from: 500, to: 1.2e5, left: true })))).toContain(
      '500 to 1.2e5 where',
    );
  });
});
