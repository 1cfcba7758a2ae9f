/** What a traced outline must be to have an inside: corners in turn round one area, no side through another. */

type Point = readonly [x: number, y: number];
type Side = readonly [from: Point, to: Point];

/** Sides of a mouth's box, and the least area of a mouth: those of the other shapes. */
const MOST_MM = 400;
const LEAST_MM2 = 100;

/** The first thing wrong with an outline: which corner, or all of it (null), and what was expected. */
export interface TracedFault {
  corner: number | null;
  expected: string;
}

export function tracedFault(points: readonly Point[], area_mm2: number): TracedFault | null {
  const of = (axis: 0 | 1): number[] => points.map((point) => point[axis]);
  const extents = ([0, 1] as const).map((axis) => Math.max(...of(axis)) - Math.min(...of(axis)));
  if (Math.max(...extents) > MOST_MM) return whole(`corners at most ${MOST_MM} mm apart across and up`);
  if (isOnOneLine(points)) return whole('corners that are not all on one line: it has no area');
  const crossing = firstCrossing(points);
  if (crossing) return crossing;
  return area_mm2 < LEAST_MM2 ? whole(`an area of at least ${LEAST_MM2} mm²`) : null;
}

const whole = (expected: string): TracedFault => ({ corner: null, expected });

const turn = ([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number =>
  (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);

const isOnOneLine = (points: readonly Point[]): boolean =>
  points.every((b) => points.every((c) => Math.abs(turn(points[0]!, b, c)) < 1e-9));

/** The side that first meets another but at their common corner; named by the corner it starts from, counted from 0. */
function firstCrossing(points: readonly Point[]): TracedFault | null {
  const sides = points.map((from, i): Side => [from, points[(i + 1) % points.length]!]);
  for (const [i, side] of sides.entries()) {
    for (let k = 0; k < i; k++) {
      const other = sides[k]!;
      const isNext = k === i - 1;
      const isLast = k === 0 && i === sides.length - 1;
      const meets = isNext ? isBack(other, side) : isLast ? isBack(side, other) : doMeet(side, other);
      if (meets) {
        return {
          corner: i,
          expected: `an outline that does not cross itself; this side meets that of corner ${k}`,
        };
      }
    }
  }
  return null;
}

/** Whether a side goes back over the one before it, or nowhere. */
function isBack([a, b]: Side, [, c]: Side): boolean {
  if (Math.abs(turn(a, b, c)) > 1e-9) return false;
  return (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) <= 0;
}

function doMeet([a, b]: Side, [c, d]: Side): boolean {
  const [atC, atD, atA, atB] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  if (atC * atD < 0 && atA * atB < 0) return true;
  return (
    (atC === 0 && isWithin(c, [a, b])) ||
    (atD === 0 && isWithin(d, [a, b])) ||
    (atA === 0 && isWithin(a, [c, d])) ||
    (atB === 0 && isWithin(b, [c, d]))
  );
}

/** Of a point on the side's line: whether it lies between its ends. */
const isWithin = ([x, y]: Point, [[ax, ay], [bx, by]]: Side): boolean =>
  Math.min(ax, bx) <= x && x <= Math.max(ax, bx) && Math.min(ay, by) <= y && y <= Math.max(ay, by);
