/** A mouth in words. */
import type { Duct } from '../../engine/index.ts';
import { blankAt, blankOf, sizeMouth } from '../../engine/scenario/mouth.ts';
import { withUnit } from './format.ts';
import { mouthSize } from './headings.ts';

/** "110 × 100 mm", "110 mm round", "110 × 60 mm oval" */
export function mouthWords(duct: Duct): string {
  const [width_mm, height_mm] = sizeMouth(duct);
  switch (duct.mouth_shape) {
    case 'round':
      return `${withUnit(width_mm, 'mm')} round`;
    case 'oval':
      return `${mouthSize(width_mm, height_mm)} oval`;
    case 'outline':
      return `${mouthSize(width_mm, height_mm)} traced`;
    default:
      return mouthSize(width_mm, height_mm);
  }
}

/** "hole 60.2 mm wide", "4 slots of 9.5 mm", "53 holes of 7.9 mm": what a plate is cut with; null for a straight edge. */
export function plateWords(duct: Duct, blanking_pct: number): string | null {
  const blank = blankOf(duct);
  if (blank.kind === 'edge') return null;
  const { openings, opening_mm } = blankAt(duct, blanking_pct);
  if (opening_mm === null) return openings.length > 0 ? 'no plate' : 'a closed plate';
  const size = withUnit(opening_mm, 'mm', 1);
  if (blank.kind === 'hole') return `hole ${size} wide`;
  const name = blank.kind === 'slots' ? 'slot' : 'hole';
  return `${openings.length} ${name}${openings.length === 1 ? '' : 's'} of ${size}`;
}
