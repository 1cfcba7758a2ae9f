/** How sure: counts, squares and dots of the same draws, so that none can tell another tale. Pure. */
import type { CornerSpread } from '../../engine/index.ts';
import { staysIn } from './doubt-words.ts';

/** Each stands for one draw in twenty. */
export const DOTS = 20;
const SQUARES = 10;

/** Of each square, from the left, the share that stays in. */
export function squaresOf(spread: CornerSpread): number[] {
  const { runs, of } = staysIn(spread);
  const filled = of > 0 ? (SQUARES * runs) / of : 0;
  return Array.from({ length: SQUARES }, (_, i) => Math.min(1, Math.max(0, filled - i)));
}

/**
 * The draws as few dots, in ascending order: as many groups of the same size, and of each the draw in its middle. So the
 * dots on one side of a limit are its share of the draws, rounded to a whole dot.
 */
export function dotsOf(values: readonly number[], dots = DOTS): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  if (sorted.length === 0) return [];
  return Array.from({ length: dots }, (_, i) => sorted[Math.floor(((i + 0.5) * sorted.length) / dots)] ?? 0);
}

export interface DotRow {
  /** In ascending order [K] */
  dots: number[];
  limit_K: number;
  /** How many of them, and how many of all draws, are on the good side. */
  good: number;
  runs: number;
  of: number;
}

/** The highest face peak of each draw against the most that the window allows. */
export const hottestRow = ({ hottest_K }: CornerSpread, facePeak_K: number): DotRow =>
  rowOf(hottest_K, facePeak_K, (value) => value <= facePeak_K);

/** The coldest start of a hard stop of each draw against bite; null where no draw has a hard stop. */
export function coldestRow({ coldest_K }: CornerSpread, bite_K: number): DotRow | null {
  const known = coldest_K.flatMap((each) => each ?? []);
  return known.length === 0 ? null : rowOf(known, bite_K, (value) => value >= bite_K);
}

function rowOf(values: readonly number[], limit_K: number, isGood: (value: number) => boolean): DotRow {
  const dots = dotsOf(values);
  const many = (of: readonly number[]): number => of.filter(isGood).length;
  return { dots, limit_K, good: many(dots), runs: many(values), of: values.length };
}
