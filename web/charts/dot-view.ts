/** Where the dots of a row lie: over their value, stacked where they would touch, none across the limit. Pure. */
import type { DotRow } from '../display/dots.ts';
import { valueScale, type ValueScale } from './value-scale.ts';

export const DOT_PX = 7;
const PITCH_PX = 2 * DOT_PX + 1;
/** Ends of the axis are this round, with as much beside the last dot at least [K] */
const ROUND_K = 25;
const BESIDE_K = 10;
const AXIS_PX = 24;

export interface Dot {
  x: number;
  y: number;
  isGood: boolean;
}

export interface DotView {
  x: ValueScale;
  dots: Dot[];
  limit: number;
  base: number;
  height: number;
}

/** The axis holds what is to be reached as well, so that rows under each other can be compared. */
export function dotView(
  { dots, limit_K }: DotRow,
  width: number,
  isGood: (value_K: number) => boolean,
  reach_K: readonly number[] = [],
): DotView {
  const least = Math.min(limit_K, ...dots, ...reach_K) - BESIDE_K;
  const most = Math.max(limit_K, ...dots, ...reach_K) + BESIDE_K;
  const low = limit_K - Math.ceil((limit_K - least) / ROUND_K) * ROUND_K;
  const high = limit_K + Math.ceil((most - limit_K) / ROUND_K) * ROUND_K;
  const x = valueScale(low, high, DOT_PX, width - DOT_PX);
  const limit = x.of(limit_K);
  const stacks = stacksOf(dots, x, isGood);
  const tallest = Math.max(0, ...stacks.map(({ values }) => values.length));
  const base = tallest * PITCH_PX + 4;
  const placed = stacks.flatMap(({ at, good, values }) =>
    values.map((_, i): Dot => ({ x: at, y: base - DOT_PX - 1 - i * PITCH_PX, isGood: good })),
  );
  return { x, dots: placed, limit, base, height: base + AXIS_PX };
}

interface Stack {
  at: number;
  good: boolean;
  values: number[];
}

/** Dots nearer than their width stand on each other; those of a limit's two sides never do. */
function stacksOf(dots: readonly number[], x: ValueScale, isGood: (value_K: number) => boolean): Stack[] {
  const stacks: Stack[] = [];
  for (const value of dots) {
    const last = stacks.at(-1);
    const first = last?.values[0];
    const joins =
      last && first !== undefined && x.of(value) - x.of(first) < PITCH_PX && last.good === isGood(value);
    if (joins) last.values.push(value);
    else stacks.push({ at: 0, good: isGood(value), values: [value] });
  }
  stacks.forEach((stack, i) => {
    const [first = 0, last = 0] = [stack.values[0], stack.values.at(-1)];
    const middle = (x.of(first) + x.of(last)) / 2;
    const before = stacks[i - 1];
    stack.at = before ? Math.max(middle, before.at + PITCH_PX) : middle;
  });
  return stacks;
}
