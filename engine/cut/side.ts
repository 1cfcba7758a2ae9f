/**
 * One side of a path: a line, or an arc told by its bulge, the tangent of a quarter of its angle, above 0 where it turns left
 * (the convention of DXF).
 */

export interface Point {
  readonly x_mm: number;
  readonly y_mm: number;
}

export interface Side {
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
}

export interface Box {
  left_mm: number;
  bottom_mm: number;
  right_mm: number;
  top_mm: number;
}

/** A direction of length 1, or a difference of two points. */
interface Vector {
  readonly x: number;
  readonly y: number;
}

export const distance_mm = (a: Point, b: Point): number => Math.hypot(b.x_mm - a.x_mm, b.y_mm - a.y_mm);

/** A point so far from another in a direction. */
export const beyond = (point: Point, along: Vector, by_mm: number): Point => ({
  x_mm: point.x_mm + along.x * by_mm,
  y_mm: point.y_mm + along.y * by_mm,
});

export function direction(from: Point, to: Point): Vector {
  const length = distance_mm(from, to);
  return { x: (to.x_mm - from.x_mm) / length, y: (to.y_mm - from.y_mm) / length };
}

export const toTheLeft = ({ x, y }: Vector): Vector => ({ x: -y, y: x });
export const toTheRight = ({ x, y }: Vector): Vector => ({ x: y, y: -x });

/** How far the second direction is turned from the first, left above 0 [rad] */
export const turn = (a: Vector, b: Vector): number =>
  Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);

const angleOf = ({ bulge }: Side): number => 4 * Math.atan(bulge);

export function radiusOf(side: Side): number {
  const b = Math.abs(side.bulge);
  return (distance_mm(side.from, side.to) * (1 + b * b)) / (4 * b);
}

export function centreOf({ from, to, bulge }: Side): Point {
  const middle = { x_mm: (from.x_mm + to.x_mm) / 2, y_mm: (from.y_mm + to.y_mm) / 2 };
  const off_mm = (distance_mm(from, to) * (1 - bulge * bulge)) / (4 * bulge);
  return beyond(middle, toTheLeft(direction(from, to)), off_mm);
}

export const sideLength_mm = (side: Side): number =>
  side.bulge === 0 ? distance_mm(side.from, side.to) : radiusOf(side) * Math.abs(angleOf(side));

/** The point at a share of the way. */
export function sidePoint(side: Side, share: number): Point {
  const { from, to, bulge } = side;
  if (bulge === 0) {
    return {
      x_mm: from.x_mm + share * (to.x_mm - from.x_mm),
      y_mm: from.y_mm + share * (to.y_mm - from.y_mm),
    };
  }
  const centre = centreOf(side);
  const at = Math.atan2(from.y_mm - centre.y_mm, from.x_mm - centre.x_mm) + share * angleOf(side);
  return beyond(centre, { x: Math.cos(at), y: Math.sin(at) }, radiusOf(side));
}

/** The way the path runs at the start (0) or at the end (1) of a side. */
export function tangent(side: Side, end: 0 | 1): Vector {
  const chord = direction(side.from, side.to);
  const by = ((end === 0 ? -1 : 1) * angleOf(side)) / 2;
  return {
    x: chord.x * Math.cos(by) - chord.y * Math.sin(by),
    y: chord.x * Math.sin(by) + chord.y * Math.cos(by),
  };
}

/** Where on a side the point lies that is known to lie on its line or circle, 0 at its start and 1 at its end. */
export function shareAt(side: Side, point: Point): number {
  const { from, to, bulge } = side;
  if (bulge === 0) {
    const along = direction(from, to);
    const by = (point.x_mm - from.x_mm) * along.x + (point.y_mm - from.y_mm) * along.y;
    return by / distance_mm(from, to);
  }
  const whole = angleOf(side);
  const angle = turn(direction(centreOf(side), from), direction(centreOf(side), point));
  const forward = angle * Math.sign(bulge);
  // a little before the start is a little before it, not nearly a whole turn behind it
  const beforeStart = forward < 0 && 2 * Math.PI + forward > Math.abs(whole) - forward;
  return (forward < 0 && !beforeStart ? 2 * Math.PI + forward : forward) / Math.abs(whole);
}

/** The part of a side between two shares of its way. */
export const partOf = (side: Side, start: number, end: number): Side => ({
  from: start === 0 ? side.from : sidePoint(side, start),
  to: end === 1 ? side.to : sidePoint(side, end),
  bulge: side.bulge === 0 ? 0 : Math.tan((angleOf(side) * (end - start)) / 4),
});

/** Shortest distance from a point [mm] */
export function distanceToSide_mm(side: Side, point: Point): number {
  const ends = Math.min(distance_mm(side.from, point), distance_mm(side.to, point));
  const share = shareAt(side, point);
  if (!(share >= 0 && share <= 1)) return ends;
  if (side.bulge !== 0) return Math.abs(distance_mm(centreOf(side), point) - radiusOf(side));
  return distance_mm(sidePoint(side, share), point);
}

/** Shortest distance from a point; 0 inside [mm] */
export const distanceToBox_mm = (box: Box, { x_mm, y_mm }: Point): number =>
  Math.hypot(
    Math.max(box.left_mm - x_mm, 0, x_mm - box.right_mm),
    Math.max(box.bottom_mm - y_mm, 0, y_mm - box.top_mm),
  );

/** The smallest upright rectangle around a side: its ends, and where an arc is furthest left, right, up or down. */
export function sideBox(side: Side): Box {
  const points = [side.from, side.to];
  if (side.bulge !== 0) {
    const [centre, radius_mm] = [centreOf(side), radiusOf(side)];
    const furthest = [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ] as const;
    const onCircle = furthest.map(([x, y]) => beyond(centre, { x, y }, radius_mm));
    points.push(...onCircle.filter((point) => isWithin(shareAt(side, point))));
  }
  const [x, y] = [points.map(({ x_mm }) => x_mm), points.map(({ y_mm }) => y_mm)];
  return {
    left_mm: Math.min(...x),
    bottom_mm: Math.min(...y),
    right_mm: Math.max(...x),
    top_mm: Math.max(...y),
  };
}

const isWithin = (share: number): boolean => share > 0 && share < 1;

/** The bulge of an arc round a centre from one point to another, left where `left` says so. */
export function bulgeAround(centre: Point, ends: { from: Point; to: Point }, left: boolean): number {
  const angle = turn(direction(centre, ends.from), direction(centre, ends.to)) * (left ? 1 : -1);
  const whole = angle < 0 ? angle + 2 * Math.PI : angle;
  return Math.tan(whole / 4) * (left ? 1 : -1);
}
