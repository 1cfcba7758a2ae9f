/** What the window forgives, in words: a disc that is in although it passed a limit for a moment. */
import type { CornerResult } from '../../engine/index.ts';
import { kelvins } from './format.ts';

type Margins = Pick<CornerResult['verdict'], 'hotMargin_K' | 'coldMargin_K'>;

/** "3 K under bite", "9 K over face peak": no other limit may be passed for a moment. */
export function excessWords({ hotMargin_K, coldMargin_K }: Margins, peak = 'face peak'): string {
  return hotMargin_K <= coldMargin_K
    ? `${kelvins(hotMargin_K)} over ${peak}`
    : `${kelvins(coldMargin_K)} under bite`;
}

export const ALLOWED = 'within the short excess allowed';
