import type { Duct } from '../../../engine/index.ts';

/** Room between the two mouths [px] */
const GAP_PX = 40;
const LARGEST_PX_PER_MM = 1.9;

/** One scale for both mouths, so that they compare, as large as the column allows [px/mm]. */
export function mouthScale(ducts: readonly (Duct | null)[], width_px: number, tallest_px: number): number {
  const there = ducts.filter((duct) => duct !== null);
  const width_mm = there.reduce((sum, duct) => sum + duct.mouth_width_mm, 0);
  const height_mm = Math.max(0, ...there.map((duct) => duct.mouth_height_mm));
  if (width_mm === 0) return 1;
  return Math.min(LARGEST_PX_PER_MM, Math.max(80, width_px - GAP_PX) / width_mm, tallest_px / height_mm);
}
