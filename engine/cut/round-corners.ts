/** Corners of a path rounded: each by the arc that touches the sides on both sides of it. */

import type { Loop } from '../duct/loop.ts';
import { carrierOf, foot, meeting } from './meet.ts';
import { sidesOf } from './path.ts';
import { bulgeAround, partOf, shareAt, tangent, turn, type Point, type Side } from './side.ts';

/** Sides that meet more smoothly than this are no corner [rad] */
const SMOOTH = 0.02;
/** A corner so slight may vanish under the arc of its neighbour [rad] */
const SLIGHT = 0.35;
/** So many sides may vanish under one arc, on either side of its corner. */
const REACH = 3;

/** Where a side is left, and where the arc is reached. */
interface Touch {
  side: number;
  share: number;
  point: Point;
}

interface Rounding {
  before: Touch;
  behind: Touch;
  bulge: number;
  /** Sides that vanish under the arc, and the corners at their ends. */
  sides: number[];
  corners: number[];
}

/** Which corners are rounded, by their place and by how far they turn, left above 0. */
type IsRounded = (corner: Point, turn: number) => boolean;

/** The path with its corners rounded by a radius; null where an arc finds no room. */
export function roundedCorners(
  loop: Loop,
  radius_mm: number,
  isRounded: IsRounded = () => true,
): Loop | null {
  const sides = sidesOf(loop);
  const turns = sides.map((side, i) => turn(tangent(sides.at(i - 1)!, 1), tangent(side, 0)));
  const found = turns.map((by, i) =>
    Math.abs(by) < SMOOTH || !isRounded(loop[i]!, by) ? null : roundingAt({ sides, turns, i, radius_mm }),
  );
  const isUnder = (corner: number): boolean => found.some((one) => one?.corners.includes(corner));
  const kept = found.filter((_, i) => !isUnder(i));
  return kept.includes(undefined) ? null : joined(sides, kept as (Rounding | null)[]);
}

interface Corner {
  sides: readonly Side[];
  turns: readonly number[];
  i: number;
  radius_mm: number;
}

/** The arc that reaches over as few sides as can be; undefined where none fits. */
function roundingAt(corner: Corner): Rounding | undefined {
  const { sides, turns, i } = corner;
  const at = (k: number): number => (k + sides.length) % sides.length;
  const isSlight = (k: number): boolean => Math.abs(turns[at(k)]!) < SLIGHT;
  for (let both = 0; both <= 2 * REACH && both < sides.length - 1; both++) {
    for (let back = Math.max(0, both - REACH); back <= Math.min(both, REACH); back++) {
      const on = both - back;
      const corners = [...range(1, back).map((k) => i - k), ...range(1, on).map((k) => i + k)];
      if (!corners.every(isSlight)) continue;
      const arc = arcBetween(corner, at(i - 1 - back), at(i + on));
      if (!arc) continue;
      const gone = [...range(1, back).map((k) => i - k), ...range(0, on - 1).map((k) => i + k)];
      return { ...arc, corners: corners.map(at), sides: gone.map(at) };
    }
  }
  return undefined;
}

const range = (from: number, to: number): number[] =>
  Array.from({ length: Math.max(0, to - from + 1) }, (_, k) => from + k);

/** The arc that touches two sides and turns as the corner does. */
function arcBetween(
  { sides, turns, i, radius_mm }: Corner,
  a: number,
  b: number,
): Pick<Rounding, 'before' | 'behind' | 'bulge'> | null {
  const isLeft = turns[i]! > 0;
  const [first, second] = [sides[a]!, sides[b]!];
  const inner_mm = isLeft ? radius_mm : -radius_mm;
  const [near, far] = [carrierOf(first, inner_mm), carrierOf(second, inner_mm)];
  const centre = near && far && meeting(near, far, sides[i]!.from);
  if (!centre) return null;
  const touch = (side: number): Touch => {
    const point = foot(carrierOf(sides[side]!, 0)!, centre);
    return { side, share: shareAt(sides[side]!, point), point };
  };
  const [before, behind] = [touch(a), touch(b)];
  if (![before, behind].every(({ share }) => share >= -1e-9 && share <= 1 + 1e-9)) return null;
  const bulge = bulgeAround(centre, { from: before.point, to: behind.point }, isLeft);
  return Math.abs(bulge) < 1 ? { before, behind, bulge } : null;
}

/** What is left of the sides, and the arcs between them; null where two arcs want the same place. */
function joined(sides: readonly Side[], roundings: readonly (Rounding | null)[]): Loop | null {
  const all = roundings.filter((one) => one !== null);
  const gone = new Set(all.flatMap((one) => one.sides));
  const parts = sides.map((side, i) => {
    const [start, end] = [
      all.filter(({ behind }) => behind.side === i),
      all.filter(({ before }) => before.side === i),
    ];
    if (gone.has(i)) return start.length + end.length > 0 ? null : [];
    return start.length > 1 || end.length > 1 ? null : leftOf(side, start[0], end[0]);
  });
  return parts.includes(null) ? null : parts.flatMap((part) => part!);
}

/** The arc that begins a side, and what is left of the side; null where the arcs of its two ends overlap. */
function leftOf(side: Side, start: Rounding | undefined, end: Rounding | undefined): Loop | null {
  const [from, to] = [start?.behind.share ?? 0, end?.before.share ?? 1];
  if (from > to + 1e-6) return null;
  const arc = start ? [{ ...start.before.point, bulge: start.bulge }] : [];
  if (start && end && to - from < 1e-6) return arc; // nothing is left of it: one arc runs into the next
  return [...arc, { ...(start?.behind.point ?? side.from), bulge: partOf(side, from, to).bulge }];
}
