/** Closed outlines of straight sides and arcs, as drawings carry them. */

/** A corner, and the side that starts there. */
export interface Corner2 {
  readonly x_mm: number;
  readonly y_mm: number;
  /** Of the side to the next corner: tan of a quarter of its arc's angle, above 0 turning left; 0 is straight. */
  readonly bulge: number;
}

/** Counter-clockwise; a hole clockwise. */
export type Loop = readonly Corner2[];

/** A side that is not straight. */
interface Arc {
  x: number;
  y: number;
  radius: number;
  /** Where it starts, as seen from its centre [rad] */
  from: number;
  /** How far it goes round, above 0 to the left [rad] */
  turn: number;
}

/** A bulge of a quarter, and of half a circle. */
export const QUARTER = Math.SQRT2 - 1;
const HALF = 1;

export const corner = (x_mm: number, y_mm: number, bulge = 0): Corner2 => ({ x_mm, y_mm, bulge });

/** The sides of a loop in turn, each by its two ends. */
export const sidesOf = (loop: Loop): (readonly [from: Corner2, to: Corner2])[] =>
  loop.map((from, i) => [from, loop[(i + 1) % loop.length]!] as const);

/** The arc between two corners; the bulge of the first is not 0. */
export function arcOf(from: Corner2, to: Corner2): Arc {
  const { bulge } = from;
  const [dx, dy] = [to.x_mm - from.x_mm, to.y_mm - from.y_mm];
  const off = (1 - bulge ** 2) / (4 * bulge);
  const x = (from.x_mm + to.x_mm) / 2 - dy * off;
  const y = (from.y_mm + to.y_mm) / 2 + dx * off;
  const radius = (Math.hypot(dx, dy) * (1 + bulge ** 2)) / (4 * Math.abs(bulge));
  return { x, y, radius, from: Math.atan2(from.y_mm - y, from.x_mm - x), turn: 4 * Math.atan(bulge) };
}

/** A place of a side: 0 at its start, 1 at its end. */
export function along(from: Corner2, to: Corner2, share: number): { x: number; y: number } {
  if (from.bulge === 0) {
    return {
      x: from.x_mm + share * (to.x_mm - from.x_mm),
      y: from.y_mm + share * (to.y_mm - from.y_mm),
    };
  }
  const arc = arcOf(from, to);
  const angle = arc.from + share * arc.turn;
  return { x: arc.x + arc.radius * Math.cos(angle), y: arc.y + arc.radius * Math.sin(angle) };
}

/**
 * Area inside a loop.
 *
 *     A = Σ ½ (x₁ y₂ − x₂ y₁) + Σ ½ R² (θ − sin θ)
 *
 * @remarks
 * Exact for lines and arcs; below 0 for a clockwise loop.
 * Source: Green's theorem, and the area of a circular segment.
 *
 * @param loop - corners in turn
 * @returns area [mm²]
 *
 * @example
 * areaLoop([{ x_mm: 0, y_mm: 5, bulge: 1 }, { x_mm: 10, y_mm: 5, bulge: 1 }]) // => 78.5398
 */
export function areaLoop(loop: Loop): number {
  return sidesOf(loop).reduce((sum, [from, to]) => sum + areaOfSide(from, to), 0);
}

function areaOfSide(from: Corner2, to: Corner2): number {
  const straight = (from.x_mm * to.y_mm - to.x_mm * from.y_mm) / 2;
  if (from.bulge === 0) return straight;
  const { radius, turn } = arcOf(from, to);
  return straight + (radius ** 2 / 2) * (turn - Math.sin(turn));
}

/** The same loop moved and grown: from (x, y) to (scale x + right, scale y + up). */
export const placed = (
  loop: Loop,
  { scale = 1, right_mm = 0, up_mm = 0 }: { scale?: number; right_mm?: number; up_mm?: number },
): Loop => loop.map(({ x_mm, y_mm, bulge }) => corner(scale * x_mm + right_mm, scale * y_mm + up_mm, bulge));

/** The same way round the other way: a hole out of an island. */
export const reversed = (loop: Loop): Loop =>
  loop.map((_, i) => {
    const at = loop.length - 1 - i;
    const { x_mm, y_mm } = loop[at]!;
    return corner(x_mm, y_mm, -loop.at(at - 1)!.bulge);
  });

/** A circle in two halves. */
export const circle = (x_mm: number, y_mm: number, diameter_mm: number): Loop => [
  corner(x_mm - diameter_mm / 2, y_mm, HALF),
  corner(x_mm + diameter_mm / 2, y_mm, HALF),
];
