/** Places on the rim of a mouth where a tab or a hole can be: where the plate's edge follows the mouth, straight enough. */

import type { Loop } from '../duct/loop.ts';
import { loopLength_mm, sidesOf } from './path.ts';
import { direction, distanceToSide_mm, sideLength_mm, sidePoint, toTheRight, type Point } from './side.ts';

/** A stretch of the plate's edge that lies on the mouth's rim, between two ways along that edge. */
export interface RimPlace {
  start_mm: number;
  middle_mm: number;
  end_mm: number;
  /** What it takes of the rim, with what must stay free beside it. */
  room_mm: number;
  middle: Point;
  /** How far it bows out of the straight line between its ends, of its length. */
  bow: number;
  /** Away from the mouth, length 1. */
  outward: { x: number; y: number };
}

/** Steps along the edge, and how many are enough for a large one. */
const STEP_MM = 1;
const MOST_STEPS = 320;
/** Their number is a multiple of this, so that a round plate has places right above and right beside its middle. */
const STEPS_OF = 8;
/** An edge lies on the rim where it is nearer than this [mm] */
const ON_RIM_MM = 0.05;
/** How far a stretch may bow out of the straight line between its ends, of its length. */
const MOST_BOW = 0.3;

export const distanceToLoop_mm = (loop: Loop, point: Point): number =>
  Math.min(...sidesOf(loop).map((side) => distanceToSide_mm(side, point)));

/** The point so far along a path. */
export function pointAlong(loop: Loop, way_mm: number): Point {
  const whole = loopLength_mm(loop);
  let left = ((way_mm % whole) + whole) % whole;
  for (const side of sidesOf(loop)) {
    const length = sideLength_mm(side);
    if (left <= length) return sidePoint(side, left / length);
    left -= length;
  }
  return loop[0]!;
}

/** All stretches of so much width on the rim, a small step apart, with so much of the rim free on both sides. */
export function rimPlaces(
  plate: Loop,
  mouth: Loop,
  { width_mm, root_mm }: { width_mm: number; root_mm: number },
): RimPlace[] {
  if (plate.length === 0) return [];
  const steps = Math.min(MOST_STEPS, loopLength_mm(plate) / STEP_MM);
  const count = STEPS_OF * Math.ceil(steps / STEPS_OF);
  const step_mm = loopLength_mm(plate) / count;
  const points = Array.from({ length: count }, (_, i) => pointAlong(plate, i * step_mm));
  const onRim = points.map((point) => distanceToLoop_mm(mouth, point) < ON_RIM_MM);
  const half = Math.ceil((width_mm / 2 + root_mm) / step_mm);
  return points.flatMap((middle, i) => {
    const around = Array.from({ length: 2 * half + 1 }, (_, k) => (i + k - half + count) % count);
    if (!around.every((k) => onRim[k])) return [];
    const [from, to] = [points[around[0]!]!, points[around.at(-1)!]!];
    const outward = toTheRight(direction(from, to));
    const off = (p: Point): number =>
      Math.abs((p.x_mm - from.x_mm) * outward.x + (p.y_mm - from.y_mm) * outward.y);
    const bow = Math.max(...around.map((k) => off(points[k]!))) / width_mm;
    if (bow > MOST_BOW) return [];
    const at_mm = i * step_mm;
    return [
      {
        start_mm: at_mm - width_mm / 2,
        middle_mm: at_mm,
        end_mm: at_mm + width_mm / 2,
        room_mm: width_mm + 2 * root_mm,
        middle,
        bow,
        outward,
      },
    ];
  });
}

/** How much of a plate's edge lies on the rim [mm] */
export function rimLength_mm(plate: Loop, mouth: Loop): number {
  const onRim = sidesOf(plate).filter((side) => distanceToLoop_mm(mouth, sidePoint(side, 0.5)) < ON_RIM_MM);
  return onRim.reduce((sum, side) => sum + sideLength_mm(side), 0);
}
