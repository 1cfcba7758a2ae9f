/**
 * The grid of wall temperatures that conductances are looked up on, and how it is filled from a few calls of a law.
 *
 * A straight line between far walls lies above every law of the outside (they bend all one way), by 0.6 to 0.9 % on the
 * mean at 250 K. A line over 50 K lies 0.03 % above; the laws themselves are smooth in the logarithm of the temperature, so
 * that five calls and a cubic through the four nearest give the grid within 0.03 % on the mean (0.05 K of a stint).
 */

/** 250, 300 ... 1500 K */
export const WALL_LOW_K = 250;
export const WALL_STEP_K = 50;
export const WALLS = 26;

/** Walls at which laws are called, in even ratios: the knots [K] */
export const KNOTS_K = [250, 391, 612, 958, 1500];
/** Knots that each wall of the grid is read from */
const NEAREST = 4;

/** For each wall of the grid: the first of the knots that it is read from, and their Lagrange weights. */
const firsts = new Int32Array(WALLS);
const weights = new Float64Array(WALLS * NEAREST);
for (let wall = 0; wall < WALLS; wall++) {
  const wall_K = WALL_LOW_K + wall * WALL_STEP_K;
  const above = KNOTS_K.findIndex((knot) => knot >= wall_K);
  const first = Math.max(0, Math.min(above - NEAREST / 2, KNOTS_K.length - NEAREST));
  const near = KNOTS_K.slice(first, first + NEAREST).map(Math.log);
  const x = Math.log(wall_K);
  firsts[wall] = first;
  near.forEach((own, i) => {
    const others = near.filter((other) => other !== own);
    weights[wall * NEAREST + i] = others.reduce(
      (product, other) => (product * (x - other)) / (own - other),
      1,
    );
  });
}

/** Writes a law of the wall, as it is at the knots, over the grid: from entry `from` of a column on. */
export function fillWalls(column: Float64Array, from: number, atKnots: Float64Array): void {
  for (let wall = 0; wall < WALLS; wall++) {
    const first = firsts[wall]!;
    let value = 0;
    for (let i = 0; i < NEAREST; i++) value += weights[wall * NEAREST + i]! * atKnots[first + i]!;
    column[from + wall] = value;
  }
}
