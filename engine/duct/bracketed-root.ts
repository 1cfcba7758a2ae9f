/** A root that is known to lie in an interval. */

/** Shape of the truncation towards the midpoint; any small value works [-] */
const TRUNCATION = 0.2;

/**
 * Root of a function that falls through zero in an interval.
 *
 * @remarks
 * Interpolate, truncate, project: as few steps as a secant method on smooth functions, and never more than one above
 * bisection on any function. If the ends do not bracket a root, the end nearest to one is returned.
 * Source: Oliveira and Takahashi, An enhancement of the bisection method average performance preserving minmax
 * optimality, ACM Trans. Math. Software 47 (2021) 5.
 *
 * @param f - function, not below 0 at the low end and not above 0 at the high end
 * @param bracket - ends of the interval and distance at which to stop, above 0
 * @returns place of the root [unit of the bracket]
 *
 * @example
 * rootFalling((x) => 2 - x * x, { low: 0, high: 2, tolerance: 1e-9 }) // => 1.4142136
 */
export function rootFalling(f: (x: number) => number, bracket: Bracket): number {
  let { low, high } = bracket;
  const { tolerance } = bracket;
  let fLow = f(low);
  let fHigh = f(high);
  if (!(fLow > 0)) return low;
  if (!(fHigh < 0)) return high;
  const width = high - low;
  let reach = tolerance * 2 ** Math.max(0, Math.ceil(Math.log2(width / (2 * tolerance))));
  while (high - low > 2 * tolerance) {
    let x = nextPlace(low, high, { secant: (low * fHigh - high * fLow) / (fHigh - fLow), reach, width });
    if (!isBetween(low, x, high)) x = (low + high) / 2; // an end so near the root that the secant rounds to it
    if (!isBetween(low, x, high)) break; // no number lies between the ends
    const fx = f(x);
    if (fx === 0) return x;
    if (fx > 0) [low, fLow] = [x, fx];
    else [high, fHigh] = [x, fx];
    reach /= 2;
  }
  return (low + high) / 2;
}

export interface Bracket {
  readonly low: number;
  readonly high: number;
  readonly tolerance: number;
}

const isBetween = (low: number, x: number, high: number): boolean => low < x && x < high;

/** The secant's place, moved towards the midpoint and kept within reach of it. */
function nextPlace(
  low: number,
  high: number,
  step: { secant: number; reach: number; width: number },
): number {
  const middle = (low + high) / 2;
  const side = Math.sign(middle - step.secant);
  const nudge = (TRUNCATION / step.width) * (high - low) ** 2;
  const nudged = nudge <= Math.abs(middle - step.secant) ? step.secant + side * nudge : middle;
  const allowed = Math.max(0, 2 * step.reach - (high - low) / 2);
  return Math.abs(nudged - middle) <= allowed ? nudged : middle - side * allowed;
}
