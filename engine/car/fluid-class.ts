/** What the label of a brake fluid promises. */

type FluidClass = 'DOT 3' | 'DOT 4' | 'DOT 5' | 'DOT 5.1' | 'other';

/**
 * Lowest equilibrium reflux boiling points, dry and wet (with 3.7 % water), that a fluid of each class may have.
 * Source: FMVSS 116 (49 CFR 571.116, S5.1.1 and S5.1.2), as several publishers give it; the regulation's own
 * table was not read.
 */
export const FLUID_MINIMA: Readonly<Record<FluidClass, { dry_C: number; wet_C: number } | null>> = {
  'DOT 3': { dry_C: 205, wet_C: 140 },
  'DOT 4': { dry_C: 230, wet_C: 155 },
  'DOT 5': { dry_C: 260, wet_C: 180 },
  'DOT 5.1': { dry_C: 260, wet_C: 180 },
  other: null,
};
