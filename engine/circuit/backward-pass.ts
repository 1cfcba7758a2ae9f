import { CRAWL, type Pace } from './pace.ts';

/**
 * Highest speed squared at each node from which every limit ahead can still be met on full brakes.
 *
 * Closed lap (`exit` absent): starts at the lowest limit of the lap, which is always reached, so that once
 * round is enough. Open end: starts from the exit's speed. Midpoint rule, second order in the step.
 */
export function backwardPass(pace: Pace, step_m: number, exit?: number): Float64Array {
  const { limit } = pace;
  const n = limit.length - 1;
  const w = limit.slice();
  const reach = (i: number): void => {
    const ahead = w[i + 1]!;
    const half = Math.max(CRAWL, ahead - step_m * pace.brake(ahead, i));
    w[i] = Math.min(limit[i]!, Math.max(CRAWL, ahead - 2 * step_m * pace.brake(half, i)));
  };
  if (exit !== undefined) {
    w[n] = Math.min(limit[n]!, exit);
    for (let i = n - 1; i >= 0; i--) reach(i);
    return w;
  }
  const lowest = lowestOf(limit);
  for (let i = lowest - 1; i >= 0; i--) reach(i);
  w[n] = w[0]!;
  for (let i = n - 1; i > lowest; i--) reach(i);
  return w;
}

/**
 * Node of the smallest value of a closed lap, whose last node is its first.
 *
 * Source: definition of the minimum; of equal values the first.
 *
 * @param values - one value a node [any]
 * @returns index of the node [-]
 *
 * @example
 * lowestOf([3, 1, 2, 3]) // => 1
 */
export function lowestOf(values: ArrayLike<number>): number {
  let at = 0;
  for (let i = 1; i < values.length - 1; i++) if (values[i]! < values[at]!) at = i;
  return at;
}
