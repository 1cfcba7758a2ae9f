/** What a session is likely to bring, in draws, and what the sensor shows then: the limits of the pit wall's card. */
import { shownBetween } from '../evidence/reading.ts';
import type { Scenario } from '../scenario/schema.ts';
import type { Sensor } from '../scenario/sensor-schema.ts';
import type { CompileOptions } from '../stint/compile.ts';
import type { CornerResult } from '../stint/result.ts';
import { cornerAt } from './corner-at.ts';
import type { Sample, Spread } from './doubt.ts';
import { quantile } from './quantiles.ts';
import type { Outcome, Search, Steps } from './search.ts';
import { cornerSpread, drawsOf } from './spread.ts';
import { unknownsOf } from './unknowns.ts';

/** In the sensor's reading; what is not known of car and sensor is within. */
export interface CornerReading extends Pick<CornerResult, 'axle' | 'side'> {
  /** Middle 80 % of the draws: of the face at its hottest, and of the coldest start of a hard stop; null without one [K] */
  hottest_K: [low: number, high: number];
  coldest_K: [low: number, high: number] | null;
  /** Above this the disc may be past a hot limit; below this it is surely under its cold one. null: no such limit [K] */
  above_K: number | null;
  below_K: number | null;
}

export interface SessionForecast extends Spread {
  /** null: no sensor is described. */
  readings: CornerReading[] | null;
}

export interface ForecastAsked extends Sample {
  sensor: Sensor | null;
}

export const sessionForecast = (
  scenario: Scenario,
  asked: ForecastAsked,
  options: CompileOptions = {},
): Search<SessionForecast> => ({ ground: { scenario, ...options }, steps: forecasting(scenario, asked) });

function* forecasting(scenario: Scenario, asked: ForecastAsked): Steps<SessionForecast> {
  const { draws, seed, sensor } = asked;
  const unknowns = unknownsOf(scenario);
  const asks = drawsOf(unknowns, asked).map((ask) => (sensor ? { ...ask, lag_s: sensor.lag_s } : ask));
  const [likely = [], ...drawn] = yield [{}, ...asks];
  const outcomesAt = (corner: Outcome): Outcome[] => drawn.map((outcomes) => cornerAt(outcomes, corner));
  return {
    draws,
    seed,
    unknowns: unknowns.length,
    corners: likely.map((corner) => cornerSpread(corner, outcomesAt(corner))),
    readings:
      sensor &&
      likely.map((corner) => ({
        axle: corner.axle,
        side: corner.side,
        ...readingOf(outcomesAt(corner), sensor),
      })),
  };
}

function readingOf(draws: Outcome[], sensor: Sensor): Omit<CornerReading, 'axle' | 'side'> {
  const peaks = draws.flatMap(({ sensed, verdict }) =>
    sensed ? [{ shown_K: sensed.peak_K, toLimit_K: verdict.hotMargin_K }] : [],
  );
  const starts = draws.flatMap(({ sensed, verdict }) =>
    sensed && sensed.coldestStop_K !== null
      ? [{ shown_K: sensed.coldestStop_K, toLimit_K: -verdict.coldMargin_K }]
      : [],
  );
  return {
    hottest_K: between(peaks, sensor)!,
    coldest_K: between(starts, sensor),
    above_K: atLimit(peaks, sensor),
    below_K: atLimit(starts, sensor),
  };
}

/** What a lagging sensor shows in one draw, and how much hotter the disc would have to be to stand at its limit. */
interface Drawn {
  shown_K: number;
  toLimit_K: number;
}

/** Of the draws outside each end. */
const TAIL = 0.1;

function between(draws: readonly Drawn[], sensor: Sensor): [low: number, high: number] | null {
  if (draws.length === 0) return null;
  const all = draws.map(({ shown_K }) => shown_K).sort((a, b) => a - b);
  return [shownBetween(quantile(all, TAIL), sensor)[0], shownBetween(quantile(all, 1 - TAIL), sensor)[1]];
}

/**
 * The reading at which a limit is reached, from the half of the draws that come nearest to it, for how far a late sensor stays
 * behind hangs on how the stint goes. By the sensor that reads the lowest: on the hot side it speaks early, on the cold side late,
 * for what is in doubt is never a reason to close.
 */
function atLimit(draws: readonly Drawn[], sensor: Sensor): number | null {
  const known = draws.filter(({ toLimit_K }) => Number.isFinite(toLimit_K));
  if (known.length === 0) return null;
  const nearest = known
    .sort((a, b) => Math.abs(a.toLimit_K) - Math.abs(b.toLimit_K))
    .slice(0, Math.ceil(known.length / 2))
    .map(({ shown_K, toLimit_K }) => shown_K + toLimit_K)
    .sort((a, b) => a - b);
  return shownBetween(quantile(nearest, TAIL), sensor)[0];
}
