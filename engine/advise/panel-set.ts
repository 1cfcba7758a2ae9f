/**
 * Which panels to bring: of all sets of the wanted size the one that keeps the largest share of the likely conditions in the
 * window; of these the one with the largest worst margin; of these the one with steps most nearly equal in kelvin; of these the
 * most open. Every set is tried, so the answer is exact. An open mouth is always at hand and counts as no panel.
 */
import type { Fitted } from './panel-table.ts';

export interface ChosenPanel {
  letter: string;
  blanking_pct: number;
}

/** What sets are compared by, in whole numbers, so that sums are exact whatever their order. */
export interface SetScore {
  /** Conditions that one of the set or an open mouth keeps in [millionths of their weight] */
  covered: number;
  /** Of the covered conditions, each with its best of the set: the smallest weighed margin; null where none is covered [whole K] */
  worst_K: number | null;
  /** Squares of the steps' differences from their mean, from an open mouth on, times the number of steps [0.1 K squared] */
  uneven: number;
}

export interface ChosenSet extends SetScore {
  /** Places among the candidates, rising; never 0, the open mouth. */
  places: number[];
}

export type Tried = Pick<Fitted, 'status' | 'weighed_K'>;

export interface Candidates {
  /** By condition, then by candidate in rising order, an open mouth first. */
  rows: readonly (readonly Tried[])[];
  /** Of each condition [-] */
  weights: readonly number[];
  /** Mean hottest face with each candidate [K] */
  heats_K: readonly number[];
}

/** Weights as whole numbers. */
export const millionths = (weight: number): number => Math.round(1e6 * weight);

/** The best set of so many panels; throws where there are not as many candidates. */
export function bestSet(candidates: Candidates, panels: number): ChosenSet {
  let best: ChosenSet | null = null;
  for (const places of choices(1, candidates.heats_K.length, panels)) {
    const next = { places, ...scoreOf(candidates, places) };
    if (!best || isBetter(next, best)) best = next;
  }
  if (!best) throw new Error(`panels: ${panels}`);
  return best;
}

/** All rising lists of so many numbers from `from` on, below `end`. */
function* choices(from: number, end: number, count: number): Generator<number[]> {
  if (count === 0) return yield [];
  for (let first = from; first + count <= end; first++)
    for (const rest of choices(first + 1, end, count - 1)) yield [first, ...rest];
}

/** The first of equals is kept: lists come with the most open first. */
function isBetter(a: SetScore, b: SetScore): boolean {
  if (a.covered !== b.covered) return a.covered > b.covered;
  if (a.worst_K !== b.worst_K) return (a.worst_K ?? 0) > (b.worst_K ?? 0);
  return a.uneven < b.uneven;
}

function scoreOf({ rows, weights, heats_K }: Candidates, places: readonly number[]): SetScore {
  const all = [0, ...places];
  let covered = 0;
  let worst_K = Infinity;
  for (const [c, row] of rows.entries()) {
    let margin_K = -Infinity;
    for (const place of all) {
      const { status, weighed_K } = row[place]!;
      if (status === 'in' && weighed_K > margin_K) margin_K = weighed_K;
    }
    if (margin_K === -Infinity) continue;
    covered += millionths(weights[c]!);
    worst_K = Math.min(worst_K, margin_K);
  }
  const steps = places.map((place, i) => Math.round(10 * (heats_K[place]! - heats_K[all[i]!]!)));
  return {
    covered,
    worst_K: Number.isFinite(worst_K) ? Math.floor(worst_K) : null,
    uneven: unevenness(steps),
  };
}

/** n Σ s² − (Σ s)², which is n² times the variance. */
function unevenness(steps: readonly number[]): number {
  const sum = steps.reduce((total, step) => total + step, 0);
  const squares = steps.reduce((total, step) => total + step * step, 0);
  return steps.length * squares - sum * sum;
}
