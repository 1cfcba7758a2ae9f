/** The centre of a mouth's area, and how far it is from the nearest side. */
import { sidesOf, type Loop } from './loop.ts';
import type { MouthOutline } from './mouth-outline.ts';

export interface Place {
  readonly x_mm: number;
  readonly y_mm: number;
}

/**
 * Centre of a mouth's area.
 *
 * @remarks
 * The middle of the box but for a traced outline, where it is the centroid of a polygon.
 *
 * @param outline - the mouth
 * @returns place [mm]
 */
export function centreOf({ kind, loop, width_mm, height_mm, area_mm2 }: MouthOutline): Place {
  if (kind !== 'outline') return { x_mm: width_mm / 2, y_mm: height_mm / 2 };
  const moment = (of: (from: Place, to: Place) => number): number =>
    sidesOf(loop).reduce((sum, [from, to]) => sum + of(from, to) * crossed(from, to), 0) / (6 * area_mm2);
  return {
    x_mm: moment((from, to) => from.x_mm + to.x_mm),
    y_mm: moment((from, to) => from.y_mm + to.y_mm),
  };
}

const crossed = (from: Place, to: Place): number => from.x_mm * to.y_mm - to.x_mm * from.y_mm;

/**
 * Distance from a mouth's centre to the nearest line that a side lies on.
 *
 *     ρ = min over sides of the distance to the left of the side
 *
 * @remarks
 * Above 0 where every side is seen from the centre. A copy of the outline scaled by s about the centre then keeps
 * (1 − s) ρ from the outline at least: the disc of ρ about the centre sees all of it.
 * Source: geometry of star-shaped polygons.
 *
 * @param outline - the mouth
 * @returns distance, 0 or less where a side turns its back to the centre [mm]
 *
 * @example
 * reachFromCentre({ kind: 'rectangle', loop: [], area_mm2: 11000, width_mm: 110, height_mm: 100 }) // => 50
 */
export function reachFromCentre(outline: MouthOutline): number {
  const { kind, width_mm, height_mm } = outline;
  if (kind !== 'outline') return Math.min(width_mm, height_mm) / 2;
  const { x_mm, y_mm } = centreOf(outline);
  const left = sidesOf(outline.loop).map(([from, to]) => {
    const [dx, dy] = [to.x_mm - from.x_mm, to.y_mm - from.y_mm];
    return (dx * (y_mm - from.y_mm) - dy * (x_mm - from.x_mm)) / Math.hypot(dx, dy);
  });
  return Math.min(...left);
}

/** A loop scaled about a place. */
export const scaledAbout = (loop: Loop, { x_mm, y_mm }: Place, scale: number): Loop =>
  loop.map((at) => ({
    ...at,
    x_mm: x_mm + scale * (at.x_mm - x_mm),
    y_mm: y_mm + scale * (at.y_mm - y_mm),
  }));
