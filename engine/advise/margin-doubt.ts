/** How far the margins of a corner are in doubt, and margins weighed by it: a kelvin on the surer side counts for more. */
import type { Scenario } from '../scenario/schema.ts';
import type { CornerResult, Verdict } from '../stint/result.ts';
import type { Sample } from './doubt.ts';
import type { Steps } from './search.ts';
import { spread } from './spread.ts';

/** Standard deviations over the draws of all unknowns [K] */
export interface MarginDoubt extends Pick<CornerResult, 'axle' | 'side'> {
  /** Of the hottest face and of the coldest start of a hard stop. */
  hot_K: number;
  cold_K: number;
}

/** Enough for a weight, which moves the best blanking by a fraction of itself. */
const WEIGHING: Sample = { draws: 32, seed: 1 };

/** Computed once, for the stint as it stands: what is not known moves other conditions much alike. */
export function* marginDoubts(scenario: Scenario, sample: Sample = WEIGHING): Steps<MarginDoubt[]> {
  const { corners } = yield* spread(scenario, sample).steps;
  return corners.map(({ axle, side, hottest_K, coldest_K }) => {
    const hot_K = deviation(hottest_K);
    const cold_K = deviation(coldest_K.filter((value) => value !== null));
    // what has no doubt, or no hard stop, is weighed like its other side
    return { axle, side, hot_K: hot_K || cold_K, cold_K: cold_K || hot_K };
  });
}

/**
 * The smaller margin, each over the doubt of its side, in kelvin of their mean doubt.
 *
 *     m = σ̄ · min(m_hot/σ_hot, m_cold/σ_cold),  σ̄ = (σ_hot + σ_cold)/2
 *
 * @remarks Where nothing is in doubt it is the smaller margin. Source: ours; equal chances to fail on both sides where errors are normal.
 * @returns weighed margin [K]
 * @example weighed_K({ hotMargin_K: 30, coldMargin_K: 12 }, { hot_K: 30, cold_K: 10 }) // => 20
 */
export function weighed_K(
  { hotMargin_K, coldMargin_K }: Pick<Verdict, 'hotMargin_K' | 'coldMargin_K'>,
  { hot_K, cold_K }: Pick<MarginDoubt, 'hot_K' | 'cold_K'>,
): number {
  if (hot_K === 0 || cold_K === 0) return Math.min(hotMargin_K, coldMargin_K);
  const mean_K = (hot_K + cold_K) / 2;
  return mean_K * Math.min(hotMargin_K / hot_K, coldMargin_K / cold_K);
}

/** Less is the rounding of a mean, and no doubt [K] */
const LEAST_K = 1e-3;

/** Sample standard deviation; 0 of fewer than two values. */
function deviation(values: readonly number[]): number {
  if (values.length < 2) return 0;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const deviation_K = Math.sqrt(squares / (values.length - 1));
  return deviation_K < LEAST_K ? 0 : deviation_K;
}
