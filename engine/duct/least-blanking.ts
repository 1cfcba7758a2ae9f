/** The least blanking that can be made at all: a plate with openings leaves no more open than holds it together. */
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
