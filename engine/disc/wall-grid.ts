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

/** Walls at which laws are called, in even ratios [K] */
const KNOTS_K = [250, 391, 612, 958, 1500];
/** Knots that each wall of the grid is read from. */
const NEAREST = 4;

interface Reading {
  first: number;
  weights: number[];
}

/** For each wall of the grid its knots and their Lagrange weights. */
const readings: Reading[] = Array.from({ length: WALLS }, (_, wall) => {
  const wall_K = WALL_LOW_K + wall * WALL_STEP_K;
  const above = KNOTS_K.findIndex((knot) => knot >= wall_K);
  const first = Math.max(0, Math.min(above - NEAREST / 2, KNOTS_K.length - NEAREST));
  const near = KNOTS_K.slice(first, first + NEAREST).map(Math.log);
  const x = Math.log(wall_K);
  const weights = near.map((own) =>
    near.reduce((product, other) => (other === own ? product : (product * (x - other)) / (own - other)), 1),
  );
  return { first, weights };
});

const atKnot = new Float64Array(KNOTS_K.length);

/** Writes a law of the wall's temperature [K] over the grid, from entry `from` of a column on. */
export function fillWalls(column: Float64Array, from: number, law: (wall_K: number) => number): void {
  KNOTS_K.forEach((knot_K, i) => (atKnot[i] = law(knot_K)));
  readings.forEach(({ first, weights }, wall) => {
    let value = 0;
    for (let i = 0; i < NEAREST; i++) value += weights[i]! * atKnot[first + i]!;
    column[from + wall] = value;
  });
}
