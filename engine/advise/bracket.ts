/**
 * Finds the safe span by bracketing over summary runs. More blanking is never cooler: too hot begins at one blanking, and
 * too cold ends at one.
 */
import type { Brake, Scenario } from '../scenario/schema.ts';
import { judge, windowOf } from '../stint/judge.ts';
import type { Verdict, WindowLimits } from '../stint/result.ts';
import { candidatesIn, spareAt } from './candidates.ts';
import { fittest } from './fittest.ts';
import { bestBlanking, looksAt, MOST_PROPOSED_PCT, type Look, type Sight } from './look.ts';
import { together, type Outcome, type Steps } from './search.ts';
import type { NoSpan, Reach, SafeSpan, SpanBound } from './span.ts';

/** Width of the bracket that is left around an end of the span, in points of blanking. */
const END_POINTS = 0.1;
/** What is nearer to an end that a limit bounds is on its edge: both print as the same percent [points] */
const EDGE_POINTS = 1;

/** The least that the blank of a duct covers [percent] */
export type LeastOf = (duct: NonNullable<Brake['duct']>) => number;

/**
 * The safe span of every corner of a scenario, in the order of its result; corners are searched side by side.
 *
 * @param leastOf - `leastBlanking`, which brings the geometry of blanks along; where all are straight edges 0 does
 */
export const bracketed = (scenario: Scenario, leastOf: LeastOf): Steps<SafeSpan[]> =>
  together(looksAt(scenario).map((sight) => spanOf(sight, leastOf)));

function* spanOf({ corner, look, changesOn }: Sight, leastOf: LeastOf): Steps<SafeSpan> {
  const { axle, side, brake } = corner;
  const least_pct = brake.duct ? leastOf(brake.duct) : 0;
  const found = yield* reachOf(brake, look, least_pct);
  const { none, best } = found;
  const first =
    none && changesOn !== null ? yield* reachOf(brake, until(look, changesOn, brake), least_pct) : null;
  const before = first?.span_pct && changesOn !== null ? { ...first, lap: changesOn } : null;
  const isIdle = best !== null && changesOn !== null && !(yield* decides(look, changesOn));
  return { axle, side, ...found, changesOn, isIdle, before };
}

/** Whether any lap counts before the blanking is changed. */
function* decides(look: Look, changesOn: number): Steps<boolean> {
  return (yield* look(0)).laps.some((lap) => lap.in !== null && lap.lap < changesOn);
}

/** The same looks, judged by the laps before one of them only. */
const until = (look: Look, end: number, brake: Brake): Look =>
  function* (blanking_pct) {
    return judgedUntil(yield* look(blanking_pct), end, brake);
  };

export function judgedUntil(outcome: Outcome, end: number, { window }: Brake): Outcome {
  const laps = outcome.laps.filter(({ lap }) => lap < end);
  return { ...outcome, laps, verdict: judge(laps, outcome.window, window.from_lap) };
}

const nothing: Reach = {
  span_pct: null,
  low: null,
  high: null,
  best: null,
  candidates: [],
  proposal: null,
  drawn: null,
  none: null,
  reason: '',
};

function* reachOf({ duct, ...brake }: Brake, look: Look, least_pct: number): Steps<Reach> {
  if (!duct) return { ...nothing, reason: 'there is no duct to blank' };
  const { verdict } = yield* look(0);
  if (verdict.status === 'not judged') return { ...nothing, reason: verdict.reason ?? 'nothing is judged' };
  const window = windowOf({ duct, ...brake });
  const [cool, warm] = (yield* together([
    endOf(look, isTooHot, { good: 0, bad: 100 }),
    endOf(look, isTooCold, { good: 100, bad: 0 }),
  ])) as [End, End];
  if (warm.last === null || cool.last === null || warm.last > cool.last) {
    const best = yield* spareAt(look, yield* bestBlanking(look, least_pct), duct.panels_pct);
    const { verdict } = yield* look(best.blanking_pct);
    return { ...nothing, best, proposal: best, none: noSpan(warm.last, cool.last, verdict, window) };
  }
  const span = rounded(warm.last, cool.last);
  const most = Math.ceil(span[0]) <= MOST_PROPOSED_PCT ? Math.min(span[1], MOST_PROPOSED_PCT) : span[1];
  const best = yield* spareAt(look, yield* bestBlanking(look, least_pct, [span[0], most]), duct.panels_pct);
  const low = warm.beyond === null ? null : coldBound(yield* look(warm.beyond));
  const high = cool.beyond === null ? null : hotBound(yield* look(cool.beyond), window);
  const [from, to] = [span[0] + (low ? EDGE_POINTS : 0), span[1] - (high ? EDGE_POINTS : 0)];
  const inner = [from, Math.min(to, most)] as const;
  const candidates = yield* candidatesIn(look, { inner, best, panels: duct.panels_pct, least_pct });
  return { ...nothing, span_pct: span, low, high, best, candidates, proposal: fittest(candidates) };
}

const isTooHot = ({ status }: Verdict): boolean => status === 'hot' || status === 'both';
const isTooCold = ({ status }: Verdict): boolean => status === 'cold' || status === 'both';

/** Ends to a tenth of a point, rounded inwards; as they are where less than that lies between them. */
function rounded(low: number, high: number): [number, number] {
  const [from, to] = [Math.ceil(10 * low) / 10, Math.floor(10 * high) / 10];
  return from <= to ? [from, to] : [low, high];
}

/** Where a limit begins to be passed: the last blanking that holds it, and the nearest that does not. */
interface End {
  /** null: none holds it. */
  last: number | null;
  /** null: all hold it. */
  beyond: number | null;
}

function* endOf(
  look: Look,
  isOut: (verdict: Verdict) => boolean,
  { good, bad }: { good: number; bad: number },
): Steps<End> {
  if (isOut((yield* look(good)).verdict)) return { last: null, beyond: good };
  if (!isOut((yield* look(bad)).verdict)) return { last: bad, beyond: null };
  let [last, beyond] = [good, bad];
  while (Math.abs(beyond - last) > END_POINTS) {
    const middle = (last + beyond) / 2;
    if (isOut((yield* look(middle)).verdict)) beyond = middle;
    else last = middle;
  }
  return { last, beyond };
}

function noSpan(
  warmFrom_pct: number | null,
  coolTo_pct: number | null,
  { swing_K, hotLimit, coldLimit }: Verdict,
  window: WindowLimits,
): NoSpan {
  const why =
    coolTo_pct === null && warmFrom_pct === 0
      ? 'hot when open'
      : warmFrom_pct === null && coolTo_pct === 100
        ? 'cold when closed'
        : 'swing';
  return {
    why,
    hotLimit,
    coldLimit,
    warmFrom_pct,
    coolTo_pct,
    swing_K,
    width_K: window.facePeak_K - window.bite_K,
    remedies: [],
  };
}

/** The first counted lap that is too hot, and by which limit. */
function hotBound({ laps }: Outcome, window: WindowLimits): SpanBound | null {
  const lap = laps.find((each) => each.in !== null && each.tooHot);
  if (!lap) return null;
  const limit = lap.bulkMax_K > window.bulk_K ? 'bulk' : 'face peak';
  return { limit, lap: lap.lap, place: lap.facePeakPlace };
}

/** The first counted lap that is too cold, and by which limit. */
function coldBound({ laps, window }: Outcome): SpanBound | null {
  const lap = laps.find((each) => each.in !== null && each.tooCold);
  if (!lap) return null;
  const isOnMean = window.run_K !== null && lap.bulkMean_K < window.run_K;
  return isOnMean
    ? { limit: 'run', lap: lap.lap, place: '' }
    : { limit: 'bite', lap: lap.lap, place: lap.coldestStopPlace ?? '' };
}
