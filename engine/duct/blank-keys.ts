/** What a duct says of the blank over its mouth, and what holds where it says nothing. */

export type MouthSide = 'outboard' | 'inboard' | 'top' | 'bottom';

export interface BlankKeys {
  readonly blank?: Blank['kind'] | undefined;
  readonly blank_from?: MouthSide | undefined;
  readonly blank_slots?: number | undefined;
  readonly blank_hole_mm?: number | undefined;
  readonly blank_thick_mm?: number | undefined;
}

export interface Blank {
  readonly kind: 'edge' | 'hole' | 'slots' | 'perforated';
  /** Where a straight edge begins; slots are parallel to it. */
  readonly from: MouthSide;
  readonly slots: number;
  /** Of a perforated one, at most. */
  readonly hole_mm: number;
}

/** The blank of a duct. */
export const blankOf = ({ blank, blank_from, blank_slots, blank_hole_mm }: BlankKeys): Blank => ({
  kind: blank ?? 'edge',
  from: blank_from ?? 'outboard',
  slots: blank_slots ?? 4,
  hole_mm: blank_hole_mm ?? 8,
});

/** Plate of a perforated blank where nothing is said of it (common practice, no source) [mm] */
const PLATE_MM = 1.5;

/**
 * Depth of a perforated blank's holes over their diameter.
 *
 *     l = t / d
 *
 * @remarks
 * Source: definition.
 *
 * @param duct - the blank's keys
 * @returns ratio [-]
 *
 * @example
 * depthOfHoles({ blank: 'perforated' }) // => 0.1875
 */
export function depthOfHoles(duct: BlankKeys): number {
  return (duct.blank_thick_mm ?? PLATE_MM) / blankOf(duct).hole_mm;
}

/** An open mouth can always be had; else no less than the least that a blank covers (`leastBlanking`). */
export const canBeMade = (blanking_pct: number, least_pct: number): boolean =>
  blanking_pct === 0 || blanking_pct >= least_pct;
