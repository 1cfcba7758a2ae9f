/**
 * Left and right that differ: a panel of one letter is cut for each side so that both run as hot, but never more than one step
 * apart, nor by more than what pulls the car.
 */
import type { AxleTables, CornerTable, Covering, Fitted } from './panel-table.ts';

/** Unequal blanking of the two sides may not move one of them by more. Common practice, no source [K] */
const MOST_APART_K = 60;

/** An axle as one: what each candidate covers on its sides, and how the worse of them does. */
export interface Joined {
  coverings: Covering[];
  /** By condition, then by candidate. */
  rows: Fitted[][];
}

/** Candidates in rising order, an open mouth first, which is open on both sides. */
export function joined(
  { sides }: AxleTables,
  candidates: readonly number[],
  weights: readonly number[],
): Joined {
  const [one, other] = sides;
  if (!one) throw new Error('sides: none');
  if (!other) return { coverings: candidates.map((pct) => ({ [one.side]: pct })), rows: one.rows };
  const pairs = candidates.map((_, i) => [i, partnerOf(i, one, other, weights)] as const);
  return {
    coverings: pairs.map(([i, j]) => ({ [one.side]: candidates[i]!, [other.side]: candidates[j]! })),
    rows: one.rows.map((row, c) => pairs.map(([i, j]) => worse(row[i]!, other.rows[c]![j]!))),
  };
}

/** The candidate of the other side that runs most nearly as hot as this one does, over the likely conditions. */
function partnerOf(i: number, one: CornerTable, other: CornerTable, weights: readonly number[]): number {
  if (i === 0) return 0;
  const near = [i, i - 1, i + 1].filter((j) => j >= 1 && j < other.rows[0]!.length);
  const apart = (j: number): number =>
    Math.max(...other.rows.map((row) => Math.abs(row[j]!.hottest_K - row[i]!.hottest_K)));
  const off = (j: number): number =>
    Math.abs(
      one.rows.reduce(
        (sum, row, c) => sum + weights[c]! * (row[i]!.hottest_K - other.rows[c]![j]!.hottest_K),
        0,
      ),
    );
  return near.filter((j) => apart(j) <= MOST_APART_K).reduce((best, j) => (off(j) < off(best) ? j : best), i);
}

/** Both at once: in where both are, and as near to each limit as the nearer. */
function worse(a: Fitted, b: Fitted): Fitted {
  return {
    status: together(a.status, b.status),
    hotMargin_K: Math.min(a.hotMargin_K, b.hotMargin_K),
    coldMargin_K: Math.min(a.coldMargin_K, b.coldMargin_K),
    weighed_K: Math.min(a.weighed_K, b.weighed_K),
    hottest_K: Math.max(a.hottest_K, b.hottest_K),
  };
}

function together(a: Fitted['status'], b: Fitted['status']): Fitted['status'] {
  if (a === b || b === 'in') return a;
  if (a === 'in') return b;
  return a === 'not judged' || b === 'not judged' ? 'not judged' : 'both';
}
