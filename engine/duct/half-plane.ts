/** A loop cut by an upright line: what lies on its near side, x below the line. Lines stay lines and arcs stay arcs. */
import { along, arcOf, areaLoop, corner, sidesOf, type Corner2, type Loop } from './loop.ts';

/** Two places no farther apart are one [mm] */
const SAME_MM = 1e-9;
/** Less than this is rounding, not a piece [mm²] */
const NOTHING_MM2 = 1e-7;

/**
 * Area of the part of a loop that lies before an upright line.
 *
 *     A(c) = ∮ min(x, c) dy
 *
 * @remarks
 * Exact for any loop of lines and arcs, however often the line crosses it.
 * Source: Green's theorem.
 *
 * @param loop - corners in turn, counter-clockwise
 * @param at_mm - where the line stands [mm]
 * @returns area [mm²]
 *
 * @example
 * areaBefore([{ x_mm: 0, y_mm: 5, bulge: 1 }, { x_mm: 10, y_mm: 5, bulge: 1 }], 1.565) // => 7.85576
 */
export function areaBefore(loop: Loop, at_mm: number): number {
  return sidesOf(splitAt(loop, at_mm)).reduce((sum, [from, to]) => {
    const isBefore = along(from, to, 0.5).x < at_mm;
    return sum + (isBefore ? sweptBy(from, to) : at_mm * (to.y_mm - from.y_mm));
  }, 0);
}

/** ∫ x dy along a side. */
function sweptBy(from: Corner2, to: Corner2): number {
  const rise = to.y_mm - from.y_mm;
  if (from.bulge === 0) return ((from.x_mm + to.x_mm) / 2) * rise;
  const { x, radius, from: start, turn } = arcOf(from, to);
  const end = start + turn;
  return x * rise + (radius ** 2 / 2) * (turn + (Math.sin(2 * end) - Math.sin(2 * start)) / 2);
}

/**
 * The parts of a loop that lie before an upright line.
 *
 * @remarks
 * The loop must not cross itself. Where it leaves the near side and comes back, the line closes the part: leaving and
 * coming back take turns up the line, for inside and outside do.
 *
 * @param loop - corners in turn, counter-clockwise
 * @param at_mm - where the line stands [mm]
 * @returns counter-clockwise loops; none where nothing lies before it
 */
export function partsBefore(loop: Loop, at_mm: number): Loop[] {
  const sides = sidesOf(splitAt(loop, at_mm));
  const isBefore = sides.map(([from, to]) => along(from, to, 0.5).x < at_mm);
  if (isBefore.every(Boolean)) return [loop];
  const chains = isBefore.flatMap((before, i) => (before && !isBefore.at(i - 1) ? [chainFrom(i)] : []));
  return joined(chains).filter((part) => areaLoop(part) > NOTHING_MM2);

  function chainFrom(first: number): Corner2[] {
    const chain: Corner2[] = [];
    let i = first;
    for (; isBefore[i % sides.length]; i++) chain.push(sides[i % sides.length]![0]);
    const { x_mm, y_mm } = sides[i % sides.length]![0];
    return [...chain, corner(x_mm, y_mm)];
  }
}

/** Closes chains along the line: the lowest end goes on at the lowest start, and so on up. */
function joined(chains: readonly Corner2[][]): Loop[] {
  const byStart = chains.toSorted((a, b) => a[0]!.y_mm - b[0]!.y_mm);
  const byEnd = chains.toSorted((a, b) => a.at(-1)!.y_mm - b.at(-1)!.y_mm);
  const next = new Map(byEnd.map((chain, i) => [chain, byStart[i]!]));
  const left = new Set(chains);
  const parts: Loop[] = [];
  for (const first of chains) {
    const part: Corner2[] = [];
    for (let chain = first; left.delete(chain); chain = next.get(chain)!) part.push(...chain);
    if (part.length > 0) parts.push(tidied(part));
  }
  return parts;
}

/** Without corners that lie on the next one. */
const tidied = (loop: Loop): Loop =>
  loop.filter((at, i) => {
    const to = loop[(i + 1) % loop.length]!;
    return Math.hypot(to.x_mm - at.x_mm, to.y_mm - at.y_mm) > SAME_MM;
  });

/** The same loop with a corner wherever the line crosses it: every side then lies on one side of the line. */
function splitAt(loop: Loop, at_mm: number): Loop {
  return sidesOf(loop).flatMap(([from, to]) => {
    const crossings = crossingsOf(from, to, at_mm);
    if (crossings.length === 0) return [from];
    const stops = [0, ...crossings, 1];
    return stops.slice(0, -1).map((start, i) => {
      const { x, y } = along(from, to, start);
      const bulge = Math.tan(Math.atan(from.bulge) * (stops[i + 1]! - start));
      return i === 0 ? { ...from, bulge } : corner(Math.abs(x - at_mm) < 1e-6 ? at_mm : x, y, bulge);
    });
  });
}

/** Where along a side the line crosses it, ends left out [-] */
function crossingsOf(from: Corner2, to: Corner2, at_mm: number): number[] {
  const length = Math.hypot(to.x_mm - from.x_mm, to.y_mm - from.y_mm);
  const isInside = (share: number): boolean => share * length > SAME_MM && (1 - share) * length > SAME_MM;
  if (from.bulge === 0) {
    const share = (at_mm - from.x_mm) / (to.x_mm - from.x_mm);
    return Number.isFinite(share) && isInside(share) ? [share] : [];
  }
  const arc = arcOf(from, to);
  const cosine = (at_mm - arc.x) / arc.radius;
  if (Math.abs(cosine) >= 1) return [];
  const angle = Math.acos(cosine);
  return [angle, -angle]
    .map((each) => sharePassed(arc, each))
    .filter(isInside)
    .sort((a, b) => a - b);
}

/** How far along an arc it passes an angle; above 1 where it does not [-] */
function sharePassed({ from, turn }: { from: number; turn: number }, angle: number): number {
  const round = 2 * Math.PI;
  const ahead = (((Math.sign(turn) * (angle - from)) % round) + round) % round;
  return ahead / Math.abs(turn);
}
