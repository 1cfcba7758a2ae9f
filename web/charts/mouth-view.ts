import { digitsOf, numberIn } from '../display/format.ts';

/** Width on screen of a duct mouth, for everything that shares its scale: drawing, range, dimensions [px] */
export const mouthWidth_px = (width_mm: number, scale_px_per_mm: number): number =>
  Math.round(width_mm * scale_px_per_mm);

/** Where the edge of the blank is, and back: percent of the mouth against pixels from its left side. */
export const edgeOf = (blanking_pct: number, width_px: number): number => (blanking_pct / 100) * width_px;

/** Whole percent, as the field shows it. */
export const blankingAt = (x: number, width_px: number): number =>
  Math.min(100, Math.max(0, Math.round((x / width_px) * 100)));

/** "77" and "33", under the mouth; a part too short for its figure goes without. */
export const dimensions = (width_mm: number, blanking_pct: number): [blanked: string, open: string] =>
  depths(width_mm, (width_mm * blanking_pct) / 100);

/** The same of an edge that is so far from the side where it begins. */
export function depths(across_mm: number, blanked_mm: number): [blanked: string, open: string] {
  const half = (value: number): number => Math.round(2 * value) / 2;
  const printed = (value: number): string => numberIn(value, 'mm', digitsOf(value, 1));
  return [printed(half(blanked_mm)), printed(half(across_mm - half(blanked_mm)))];
}
