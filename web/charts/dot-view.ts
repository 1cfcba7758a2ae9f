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
  const stacks = stacksOf({ dots, limit_K }, x, isGood);
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
function stacksOf(
  { dots, limit_K }: Pick<DotRow, 'dots' | 'limit_K'>,
  x: ValueScale,
  isGood: (value_K: number) => boolean,
): Stack[] {
  const stacks: Stack[] = [];
  for (const value of dots) {
    const last = stacks.at(-1);
    const first = last?.values[0];
    const joins =
      last && first !== undefined && x.of(value) - x.of(first) < PITCH_PX && last.good === isGood(value);
    if (joins) last.values.push(value);
    else stacks.push({ at: 0, good: isGood(value), values: [value] });
  }
  // beside the limit first, then away from it, each as far as the one before needs
  const isLow = ({ good }: Stack): boolean => good === isGood(limit_K - 1);
  let [low, high] = [x.of(limit_K) - DOT_PX, x.of(limit_K) + DOT_PX];
  for (const stack of stacks.filter(isLow).reverse()) {
    stack.at = Math.min(middleOf(stack, x), low);
    low = stack.at - PITCH_PX;
  }
  for (const stack of stacks.filter((each) => !isLow(each))) {
    stack.at = Math.max(middleOf(stack, x), high);
    high = stack.at + PITCH_PX;
  }
  return stacks;
}

const middleOf = ({ values }: Stack, x: ValueScale): number =>
  (x.of(values[0] ?? 0) + x.of(values.at(-1) ?? 0)) / 2;
