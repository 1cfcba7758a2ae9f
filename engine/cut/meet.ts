/** The line or circle that a side lies on, moved sideways, and where two of them meet. */

import {
  beyond,
  centreOf,
  direction,
  distance_mm,
  radiusOf,
  toTheLeft,
  type Point,
  type Side,
} from './side.ts';

export type Carrier =
  { start: Point; along: { x: number; y: number } } | { centre: Point; radius_mm: number };

/** What carries a side, moved to its left; null where an arc vanishes. */
export function carrierOf(side: Side, left_mm: number): Carrier | null {
  if (side.bulge === 0) {
    const along = direction(side.from, side.to);
    return { start: beyond(side.from, toTheLeft(along), left_mm), along };
  }
  const radius_mm = radiusOf(side) - left_mm * Math.sign(side.bulge);
  return radius_mm > 0 ? { centre: centreOf(side), radius_mm } : null;
}

/** The point of a carrier nearest to a point. */
export function foot(carrier: Carrier, point: Point): Point {
  if ('centre' in carrier) {
    return beyond(carrier.centre, direction(carrier.centre, point), carrier.radius_mm);
  }
  const { start, along } = carrier;
  return beyond(start, along, (point.x_mm - start.x_mm) * along.x + (point.y_mm - start.y_mm) * along.y);
}

/** Where two carriers meet, nearest to a point; null where they do not. */
export function meeting(a: Carrier, b: Carrier, near: Point): Point | null {
  const [first, ...others] = meetings(a, b);
  if (!first) return null;
  return others.reduce((best, p) => (distance_mm(p, near) < distance_mm(best, near) ? p : best), first);
}

function meetings(a: Carrier, b: Carrier): Point[] {
  if ('centre' in a) return 'centre' in b ? twoCircles(a, b) : lineAndCircle(b, a);
  return 'centre' in b ? lineAndCircle(a, b) : twoLines(a, b);
}

type Line = Extract<Carrier, { start: Point }>;
type Circle = Extract<Carrier, { centre: Point }>;

function twoLines(a: Line, b: Line): Point[] {
  const cross = a.along.x * b.along.y - a.along.y * b.along.x;
  if (Math.abs(cross) < 1e-9) return [];
  const [dx, dy] = [b.start.x_mm - a.start.x_mm, b.start.y_mm - a.start.y_mm];
  return [beyond(a.start, a.along, (dx * b.along.y - dy * b.along.x) / cross)];
}

function lineAndCircle(line: Line, circle: Circle): Point[] {
  const middle = foot(line, circle.centre);
  const off = circle.radius_mm ** 2 - distance_mm(middle, circle.centre) ** 2;
  if (off < 0) return [];
  return [Math.sqrt(off), -Math.sqrt(off)].map((by) => beyond(middle, line.along, by));
}

/** On the line through the two points that circles share. */
function twoCircles(a: Circle, b: Circle): Point[] {
  const apart = distance_mm(a.centre, b.centre);
  if (apart < 1e-9) return [];
  const along = direction(a.centre, b.centre);
  const by = (apart ** 2 + a.radius_mm ** 2 - b.radius_mm ** 2) / (2 * apart);
  return lineAndCircle({ start: beyond(a.centre, along, by), along: toTheLeft(along) }, a);
}
