/** A path moved sideways: exactly where lines and arcs allow it, as a polygon where they do not. */

import { Clipper, EndType, JoinType } from 'clipper2-ts';
import { areaLoop, reversed, type Loop } from '../duct/loop.ts';
import { flattened, polygonLoop, sidesOf } from './path.ts';
import { carrierOf, foot, meeting, type Carrier } from './meet.ts';
import { bulgeAround, direction, tangent, turn, type Point, type Side } from './side.ts';

/** How far a polygon may leave the arc it stands for [mm] */
const FLAT_MM = 0.002;
/** The same where nothing is cut along it. */
const ROUGH_MM = 0.05;
/** Decimals of a millimetre that a polygon is computed to. */
const DECIMALS = 4;

/**
 * The path moved to its right: outwards where it runs counter-clockwise, into the hole where it runs clockwise. Empty where it does not
 * stay one path.
 */
export function movedOutward(loop: Loop, by_mm: number): Loop {
  if (by_mm === 0) return loop;
  const exact = movedExactly(loop, by_mm);
  if (exact) return exact;
  const [only = [], ...others] = inflated(loop, by_mm);
  return others.length === 0 ? only : [];
}

/** Corners that point outwards rounded by moving a polygon in and out again. */
export const roundedOutward = (loop: Loop, radius_mm: number): Loop =>
  largest(inflatedAll(inflated(loop, -radius_mm), radius_mm));

/** All corners rounded by moving a polygon in, out and in again: what is narrower than twice the radius is lost. */
export function roundedByMoving(loop: Loop, radius_mm: number): Loop {
  const opened = inflatedAll(inflated(loop, -radius_mm), 2 * radius_mm);
  return largest(inflatedAll(opened, -radius_mm));
}

function largest(loops: readonly Loop[]): Loop {
  const size = (loop: Loop): number => Math.abs(areaLoop(loop));
  return loops.reduce((best, loop) => (size(loop) > size(best) ? loop : best), []);
}

const inflated = (loop: Loop, by_mm: number): Loop[] => {
  const isHole = areaLoop(loop) < 0;
  const moved = inflatedAll([isHole ? reversed(loop) : loop], isHole ? -by_mm : by_mm);
  return isHole ? moved.map(reversed) : moved;
};

function inflatedAll(loops: readonly Loop[], by_mm: number, within_mm = FLAT_MM): Loop[] {
  const paths = loops.map((loop) =>
    flattened(loop, within_mm).map(({ x_mm, y_mm }) => ({ x: x_mm, y: y_mm })),
  );
  const moved = Clipper.inflatePathsD(paths, by_mm, JoinType.Round, EndType.Polygon, 2, DECIMALS, within_mm);
  return moved.map((path) => polygonLoop(path.map(({ x, y }) => ({ x_mm: x, y_mm: y }))));
}

/** Null where a side vanishes or two that met no longer do. */
function movedExactly(loop: Loop, by_mm: number): Loop | null {
  const sides = sidesOf(loop);
  const carriers = sides.map((side) => carrierOf(side, -by_mm));
  if (carriers.includes(null)) return null;
  const joints = sides.map((side, i) =>
    jointOf([sides.at(i - 1)!, side], [carriers.at(i - 1)!, carriers[i]!], by_mm),
  );
  if (joints.includes(null)) return null;
  const moved = sides.map((side, i) =>
    movedSide(side, carriers[i]!, [joints[i]!, joints[(i + 1) % sides.length]!]),
  );
  return moved.includes(null) ? null : moved.flatMap((corners) => corners!);
}

/** The moved ends of two sides in their corner: one point, or two with an arc round the corner between them. */
interface Joint {
  before: Point;
  behind: Point;
  bulge: number;
}

function jointOf(sides: [Side, Side], carriers: [Carrier, Carrier], by_mm: number): Joint | null {
  const corner = sides[1].from;
  const [before, behind] = [foot(carriers[0], corner), foot(carriers[1], corner)];
  const angle = turn(tangent(sides[0], 1), tangent(sides[1], 0));
  if (Math.abs(angle) < 1e-6) return { before: behind, behind, bulge: 0 };
  if (angle * by_mm > 0) return { before, behind, bulge: Math.tan(angle / 4) };
  const shared = meeting(carriers[0], carriers[1], corner);
  return shared && { before: shared, behind: shared, bulge: 0 };
}

/** A side between its joints, behind the arc that begins it; null where it would run backwards. */
function movedSide(side: Side, carrier: Carrier, [start, end]: [Joint, Joint]): Loop | null {
  const ends = { from: start.behind, to: end.before };
  if (Math.abs(turn(direction(side.from, side.to), direction(ends.from, ends.to))) > Math.PI / 2) return null;
  const bulge = 'centre' in carrier ? bulgeAround(carrier.centre, ends, side.bulge > 0) : 0;
  return [...(start.bulge === 0 ? [] : [{ ...start.before, bulge: start.bulge }]), { ...ends.from, bulge }];
}

/** What of a plate lies further from every cut than a margin, as polygons. */
export const clearOf = (cuts: readonly Loop[], margin_mm: number): Point[][] =>
  inflatedAll(cuts, -margin_mm, ROUGH_MM).map((loop) => [...loop]);
