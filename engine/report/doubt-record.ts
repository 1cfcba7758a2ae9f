/** The spread and what to measure first in the trade's units: what `--spread` adds to the object that `--json` prints. */
import type { CornerSensitivity, CornerSpread, Effect, Quantiles, Spread } from '../advise/doubt.ts';
import { quantilesOf } from '../advise/quantiles.ts';
import { nameOf } from '../scenario/key-name.ts';
import { celsius } from '../units.ts';

export interface CornerSpreadRecord extends Pick<CornerSpread, 'axle' | 'side' | 'count'> {
  /** Highest face peak and coldest start of a hard stop over the counted laps, over all draws. */
  hottest_C: Quantiles;
  coldest_C: Quantiles | null;
  laps: { lap: number; counted: boolean; facePeak_C: Quantiles; coldestStop_C: Quantiles | null }[];
  /** The same, draw by draw. */
  draws: { hottest_C: number; coldest_C: number | null }[];
}

export interface SpreadRecord extends Pick<Spread, 'draws' | 'seed' | 'unknowns'> {
  distribution: 'triangular';
  /** Whether a measured run has corrected the model. */
  calibrated: boolean;
  corners: CornerSpreadRecord[];
}

export interface MeasureFirstRecord extends Pick<CornerSensitivity, 'axle' | 'side' | 'failsFirst'> {
  /** What is worth measuring first; null where nothing moves the answer by a word's worth. */
  first: { name: string; moves_K: number } | null;
  /** All unknowns, the largest at the top. */
  ranked: (Effect & { name: string })[];
}

export const spreadRecord = (
  { draws, seed, unknowns, corners }: Spread,
  calibrated: boolean,
): SpreadRecord => ({
  draws,
  seed,
  unknowns,
  distribution: 'triangular',
  calibrated,
  corners: corners.map(cornerRecord),
});

export const measureFirstRecord = (found: readonly CornerSensitivity[]): MeasureFirstRecord[] =>
  found.map(({ axle, side, failsFirst, effects, measureFirst: first }) => ({
    axle,
    side,
    failsFirst,
    first: first && { name: nameOf(first.key), moves_K: first.moves_K },
    ranked: effects.map((effect) => ({ name: nameOf(effect.key), ...effect })),
  }));

function cornerRecord({ axle, side, count, laps, hottest_K, coldest_K }: CornerSpread): CornerSpreadRecord {
  const cold = coldest_K.flatMap((each) => each ?? []);
  return {
    axle,
    side,
    count,
    hottest_C: inCelsius(quantilesOf(hottest_K)),
    coldest_C: cold.length === 0 ? null : inCelsius(quantilesOf(cold)),
    laps: laps.map(({ lap, counted, facePeak_K, coldestStop_K }) => ({
      lap,
      counted,
      facePeak_C: inCelsius(facePeak_K),
      coldestStop_C: coldestStop_K && inCelsius(coldestStop_K),
    })),
    draws: hottest_K.map((hottest, i) => {
      const coldest = coldest_K[i] ?? null;
      return { hottest_C: celsius(hottest), coldest_C: coldest === null ? null : celsius(coldest) };
    }),
  };
}

const inCelsius = ({ p5, p10, p25, p50, p75, p90, p95 }: Quantiles): Quantiles => ({
  p5: celsius(p5),
  p10: celsius(p10),
  p25: celsius(p25),
  p50: celsius(p50),
  p75: celsius(p75),
  p90: celsius(p90),
  p95: celsius(p95),
});
