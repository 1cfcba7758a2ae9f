/** Which blankings can be made at all: of a plate with openings not those that leave more open than it can. */
import { blankOf, type BlankKeys } from './blank-keys.ts';
import { leastCovered } from './blank.ts';
import type { MouthKeys } from './mouth-area.ts';
import { mouthOutline } from './mouth-outline.ts';

/**
 * The least that the blank of a duct covers, if anything is fitted.
 *
 *     100 (1 − A_most/A)
 *
 * @remarks
 * 0 for a straight edge.
 * Source: geometry of the blanks (`leastCovered`).
 *
 * @param duct - the keys of its mouth and blank
 * @returns share; 100 where no opening has room [%]
 *
 * @example
 * leastBlanking({ mouth_width_mm: 80, mouth_height_mm: 80, blank: 'hole' }) // => 19.0
 */
export function leastBlanking(duct: MouthKeys & BlankKeys): number {
  const blank = blankOf(duct);
  if (blank.kind === 'edge') return 0;
  let least_pct = known.get(duct);
  if (least_pct === undefined) known.set(duct, (least_pct = leastCovered(mouthOutline(duct), blank)));
  return least_pct;
}

/** A check asks at every frame of a drag, of the same duct. */
const known = new WeakMap<object, number>();

/** An open mouth can always be had. */
export const canBeMade = (blanking_pct: number, least_pct: number): boolean =>
  blanking_pct === 0 || blanking_pct >= least_pct;
