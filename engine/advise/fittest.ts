/** What to fit of what can be: the one place that decides it. */
import { smallerMargin_K, type Spare } from './span.ts';

/** Whether a candidate stays in, draw by draw; all candidates meet the same draws. */
type Kept = readonly boolean[];

/**
 * Of the candidates whose draws in are not told from the most, the one with the largest smaller margin. Without draws, and where
 * none keeps it in, the largest smaller margin of all. One draw more or less is chance; a margin is not.
 */
export function fittest(candidates: readonly Spare[], kept: readonly Kept[] | null = null): Spare | null {
  if (!kept) return mostToSpare(candidates);
  const counts = kept.map((draws) => draws.filter(Boolean).length);
  const leader = mostToSpare(candidates.filter((_, i) => counts[i] === Math.max(...counts)));
  if (!leader) return null;
  // all are told from one and the same: what does not differ from a neighbour may differ from its neighbour's
  const most = kept[candidates.indexOf(leader)]!;
  return mostToSpare(candidates.filter((_, i) => !isToldFrom(most, kept[i]!)));
}

/** The first of equals. */
const mostToSpare = (candidates: readonly Spare[]): Spare | null =>
  candidates.reduce<Spare | null>(
    (best, spare) => (best && smallerMargin_K(spare) <= smallerMargin_K(best) ? best : spare),
    null,
  );

/**
 * Whether a count of draws in is larger than another by more than its counting error, which is one standard error of the paired
 * difference: b draws are in with the one alone, c with the other alone.
 *
 *     b − c > √(b + c)
 *
 * Source: McNemar, Psychometrika 12 (1947) 153 (his test asks for 1.96 of them). One is ours: what is chosen need not be proven,
 * and more would give up draws for a kelvin.
 */
function isToldFrom(most: Kept, other: Kept): boolean {
  const b = most.filter((isIn, draw) => isIn && !other[draw]).length;
  const c = other.filter((isIn, draw) => isIn && !most[draw]).length;
  return (b - c) ** 2 > b + c;
}
