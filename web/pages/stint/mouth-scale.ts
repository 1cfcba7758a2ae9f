import type { Duct } from '../../../engine/index.ts';
import { sizeMouth } from '../../../engine/scenario/mouth.ts';

/** Room between the two mouths [px] */
export const GAP_PX = 12;
/** The strips' buttons beside a mouth, with their gap [px] */
const STRIPS_PX = 54;
const LARGEST_PX_PER_MM = 1.9;

/** What the scale has to keep to [px] */
interface Frame {
  width: number;
  tallest: number;
  isStacked: boolean;
}

/** One scale for both mouths, so that they compare, as large as its half of the column allows the wider one [px/mm]. */
export function mouthScale(ducts: readonly (Duct | null)[], { width, tallest, isStacked }: Frame): number {
  const sizes = ducts.filter((duct) => duct !== null).map(sizeMouth);
  const width_mm = Math.max(0, ...sizes.map(([width]) => width));
  const height_mm = Math.max(0, ...sizes.map(([, height]) => height));
  if (width_mm === 0) return 1;
  const room = (width - GAP_PX) / 2 - (isStacked ? STRIPS_PX : 0);
  return Math.min(LARGEST_PX_PER_MM, Math.max(60, room) / width_mm, tallest / height_mm);
}
