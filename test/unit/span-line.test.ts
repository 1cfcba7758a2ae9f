import { describe, expect, it } from 'vitest';
import type { Count } from '../../engine/advise/doubt.ts';
import { spanLine } from '../../engine/report/span-line.ts';
import type { CornerRecord } from '../../engine/report/summary.ts';

describe('the safe span in a terminal', () => {
  const fitting = (hotMargin_K: number, coldMargin_K: number, count: Count | null = null): string => {
    const proposal = { blanking_pct: 71, panel: null, hotMargin_K, coldMargin_K, count };
    const span = { isIdle: false, low: null, high: null, proposal, none: null, best: null, before: null };
    return spanLine('front', { safeSpan_pct: [66, 74], span } as unknown as CornerRecord);
  };

  it('says what is to spare where that is fitted', () => {
    expect(fitting(8, 20)).toBe(
      'front: safe on counted laps from 66 to 74 % blanked; fit 71 %, 8 K to spare',
    );
  });

  it('says how many runs that keeps in, where they were made', () => {
    expect(fitting(8, 20, { in: 31, hot: 44, cold: 20, both: 3, notJudged: 2 })).toMatch(
      /; fit 71 %, 8 K to spare, 31 of 100 runs stay in$/,
    );
  });

  it('calls what the window forgives neither too hot nor too cold', () => {
    expect(fitting(8, -3)).toMatch(/; fit 71 %, 3 K under bite, within the short excess allowed$/);
    expect(fitting(-9, 8)).toMatch(/; fit 71 %, 9 K over face peak, within the short excess allowed$/);
  });
});
