/** A blank with slots: equal openings side by side, from rim to rim. */
import type { MouthSide } from './blank-keys.ts';
import { rootFalling } from './bracketed-root.ts';
import { areaBefore } from './half-plane.ts';
import { BAR_MM, insetOf } from './inset.ts';
import type { Loop } from './loop.ts';
import type { MouthOutline } from './mouth-outline.ts';
import { partsBetween, turnedBack, turnedTo } from './sweep.ts';

export interface Slots {
  /** What they leave open at their widest, with bars of the least width [mm²] */
  readonly most_mm2: number;
  /** What they leave open at a width [mm²] */
  openAt(width_mm: number): number;
  /** The openings that leave so much open, at most the most. */
  openingsFor(open_mm2: number): { openings: Loop[]; width_mm: number };
}

const TOLERANCE_MM = 1e-8;

/**
 * Slots in an outline, parallel to one of its sides.
 *
 *     A(w) = Σ [a(cᵢ + w/2) − a(cᵢ − w/2)],   a: area inside the rim before an upright line
 *
 * @remarks
 * The room inside the rim is parted into as many equal strips as there are slots, each with its slot in the middle.
 *
 * @param outline - the mouth
 * @param from - a side that the slots are parallel to
 * @param count - how many
 * @returns the most that they leave open and the openings for an area; null where they have no room
 */
export function slotsOf(outline: MouthOutline, from: MouthSide, count: number): Slots | null {
  const inset = insetOf(outline);
  if (!inset) return null;
  const turned = turnedTo(inset, from, outline);
  const [low, high] = extentOf(turned);
  const pitch_mm = (high - low) / count;
  const widest_mm = pitch_mm - BAR_MM;
  if (widest_mm <= 0) return null;
  const ends = (width_mm: number): [number, number][] =>
    Array.from({ length: count }, (_, i) => {
      const middle = low + (i + 0.5) * pitch_mm;
      return [middle - width_mm / 2, middle + width_mm / 2];
    });
  const openAt = (width_mm: number): number =>
    ends(width_mm).reduce((sum, [a, b]) => sum + areaBefore(turned, b) - areaBefore(turned, a), 0);
  const openingsFor = (open_mm2: number): { openings: Loop[]; width_mm: number } => {
    const bracket = { low: 0, high: widest_mm, tolerance: TOLERANCE_MM };
    const width_mm = rootFalling((width) => open_mm2 - openAt(width), bracket);
    const parts = ends(width_mm).flatMap(([a, b]) => partsBetween(turned, a, b));
    return { openings: parts.map((part) => turnedBack(part, from, outline)), width_mm };
  };
  return { most_mm2: openAt(widest_mm), openAt, openingsFor };
}

/** A loop's first and last place across; arcs of insets end at their outermost places. */
function extentOf(loop: Loop): [low: number, high: number] {
  const across = loop.map(({ x_mm }) => x_mm);
  return [Math.min(...across), Math.max(...across)];
}
