/** Closed paths of lines and arcs, in mm: seen as sides, measured, moved and mirrored. */

import { sideBox, sideLength_mm, sidePoint, type Box, type Point, type Side } from './side.ts';
import type { Loop } from '../duct/loop.ts';

/** How far the corners of a polygon may stand for an arc [mm] */
const FLAT_MM = 0.002;
/** Where a tenth of a millimetre is enough [mm] */
const ROUGH_MM = 0.05;

/** Each corner with the one behind it. */
export const sidesOf = (loop: Loop): Side[] =>
  loop.map((corner, i) => ({ from: corner, to: loop[(i + 1) % loop.length]!, bulge: corner.bulge }));

export const loopLength_mm = (loop: Loop): number =>
  sidesOf(loop).reduce((sum, side) => sum + sideLength_mm(side), 0);

/** The smallest upright rectangle around paths, arcs included. */
export function boxOf(loops: readonly Loop[]): Box {
  const boxes = loops.flatMap(sidesOf).map(sideBox);
  return {
    left_mm: Math.min(...boxes.map((box) => box.left_mm)),
    bottom_mm: Math.min(...boxes.map((box) => box.bottom_mm)),
    right_mm: Math.max(...boxes.map((box) => box.right_mm)),
    top_mm: Math.max(...boxes.map((box) => box.top_mm)),
  };
}

export const widthOf = (box: Box): number => box.right_mm - box.left_mm;
export const heightOf = (box: Box): number => box.top_mm - box.bottom_mm;

/** A path as a polygon that leaves its arcs by no more than a few micrometres. */
export const flattened = (loop: Loop, within_mm = FLAT_MM): Point[] =>
  sidesOf(loop).flatMap((side) => flatSide(side, within_mm));

function flatSide(side: Side, within_mm: number): Point[] {
  if (side.bulge === 0) return [side.from];
  const angle = 4 * Math.atan(Math.abs(side.bulge));
  const radius_mm = sideLength_mm(side) / angle;
  const step = 2 * Math.acos(1 - Math.min(1, within_mm / radius_mm));
  const steps = Math.ceil(angle / step);
  return Array.from({ length: steps }, (_, i) => sidePoint(side, i / steps));
}

export const polygonLoop = (points: readonly Point[]): Loop =>
  points.map(({ x_mm, y_mm }) => ({ x_mm, y_mm, bulge: 0 }));

/** Left and right exchanged. It runs the same way round and starts in the same corner, so that twice is the path itself. */
export const mirroredLoop = (loop: Loop): Loop =>
  loop.map((_, i) => {
    const { x_mm, y_mm } = loop.at(-i)!; // the corners backwards, the first one first
    return { x_mm: 0 - x_mm, y_mm, bulge: loop.at(-i - 1)!.bulge };
  });

/** By a quarter to the left about (0, 0). */
export const turnedPoint = ({ x_mm, y_mm }: Point): Point => ({ x_mm: 0 - y_mm, y_mm: x_mm });

export const turnedLoop = (loop: Loop): Loop =>
  loop.map((corner) => ({ ...turnedPoint(corner), bulge: corner.bulge }));

export const movedLoop = (loop: Loop, by: Point): Loop =>
  loop.map(({ x_mm, y_mm, bulge }) => ({ x_mm: x_mm + by.x_mm, y_mm: y_mm + by.y_mm, bulge }));

/** Tells of points whether they lie inside a path: behind an odd number of its sides, seen from the left. */
export function insideOf(loop: Loop): (point: Point) => boolean {
  const flat = flattened(loop);
  const edges = flat.map((a, i) => [a, flat[(i + 1) % flat.length]!] as const);
  return ({ x_mm: x, y_mm: y }) => {
    const crossed = edges.filter(([a, b]) => {
      if (a.y_mm > y === b.y_mm > y) return false;
      return a.x_mm + ((y - a.y_mm) / (b.y_mm - a.y_mm)) * (b.x_mm - a.x_mm) < x;
    });
    return crossed.length % 2 === 1;
  };
}

/** The largest distance between two points of a path: the size that must not pass a hose [mm] */
export function longest_mm(loop: Loop): number {
  const flat = flattened(loop, ROUGH_MM);
  let longest = 0;
  for (const [i, a] of flat.entries()) {
    for (const b of flat.slice(i + 1))
      longest = Math.max(longest, Math.hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm));
  }
  return longest;
}
