/** Places on the rim of a mouth where a tab or a hole can be: where the plate's edge follows the mouth, straight enough. */

import type { Loop } from '../duct/loop.ts';
import { loopLength_mm, sidesOf } from './path.ts';
import {
  direction,
  distanceToBox_mm,
  distanceToSide_mm,
  sideBox,
  sideLength_mm,
  sidePoint,
  toTheRight,
  type Point,
} from './side.ts';

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

/** Tells of points how far they are from a path [mm] */
export function distanceFrom(loop: Loop): (point: Point) => number {
  const sides = sidesOf(loop).map((side) => ({ side, box: sideBox(side) }));
  return (point) => {
    let least = Infinity;
    for (const { side, box } of sides) {
      if (distanceToBox_mm(box, point) < least) least = Math.min(least, distanceToSide_mm(side, point));
    }
    return least;
  };
}

/** The point so far along a path. */
export function pointsAlong(loop: Loop): (way_mm: number) => Point {
  const sides = sidesOf(loop).map((side) => ({ side, length_mm: sideLength_mm(side) }));
  const whole = loopLength_mm(loop);
  return (way_mm) => {
    let left = ((way_mm % whole) + whole) % whole;
    for (const { side, length_mm } of sides) {
      if (left <= length_mm) return sidePoint(side, left / length_mm);
      left -= length_mm;
    }
    return loop[0]!;
  };
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
  const pointAt = pointsAlong(plate);
  const distance = distanceFrom(mouth);
  const points = Array.from({ length: count }, (_, i) => pointAt(i * step_mm));
  const onRim = points.map((point) => distance(point) < ON_RIM_MM);
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
  const distance = distanceFrom(mouth);
  const onRim = sidesOf(plate).filter((side) => distance(sidePoint(side, 0.5)) < ON_RIM_MM);
  return onRim.reduce((sum, side) => sum + sideLength_mm(side), 0);
}
