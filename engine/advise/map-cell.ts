/** One cell of a conditions map: the safe span of a corner in whole percent, and its best blanking. */
import type { Verdict } from '../stint/result.ts';
import { MOST_PROPOSED_PCT, type Look } from './look.ts';
import { weighed_K, type MarginDoubt } from './margin-doubt.ts';
import { together, type Steps } from './search.ts';
import type { NoSpan, Spare } from './span.ts';
import { lastThat, type Guess } from './whole-percents.ts';

/** At the best blanking: where the weighed margin is largest, inside the span if there is one. */
export interface MapBest extends Pick<Spare, 'blanking_pct' | 'hotMargin_K' | 'coldMargin_K'> {
  weighed_K: number;
}

/** One corner under one pair of conditions. */
export interface SpanCell {
  /** In whole percent of the mouth, both ends in; null where no blanking stays in. */
  span_pct: [low: number, high: number] | null;
  /** null where nothing is judged. */
  best: MapBest | null;
  /** Why there is no span. */
  why: NoSpan['why'] | 'not judged' | null;
}

/** What a cell found on the way to its answer, for its neighbour to begin at. */
export interface FoundCell {
  cell: SpanCell;
  /** The most that is not too hot, the most open share that is not too cold, the last that is colder than hot. */
  ends: readonly [cool: number, warm: number, even: number] | null;
}

const FAR: readonly Guess[] = [50, 50, 50].map((at) => ({ at, step: 16 }));

/** Goes on as the last two cells went; as the last one where there is no other. */
export function guessesFrom(trails: readonly Pick<FoundCell, 'ends'>[]): readonly Guess[] {
  const last = trails.at(-1)?.ends;
  if (!last) return FAR;
  const before = trails.at(-2)?.ends ?? last;
  return last.map((end, i) => ({ at: 2 * end - before[i]!, step: 1 }));
}

export function* cellAt(look: Look, doubt: MarginDoubt, guesses: readonly Guess[]): Steps<FoundCell> {
  const is = (holds: (verdict: Verdict) => boolean, pctOf: (at: number) => number) =>
    function* (at: number): Steps<boolean> {
      return holds((yield* look(pctOf(at))).verdict);
    };
  const covered = (at: number): number => at;
  const open = (at: number): number => 100 - at;
  const ends = yield* together([
    lastThat(is(isCoolEnough, covered), 100, guesses[0]!),
    lastThat(is(isWarmEnough, open), 100, guesses[1]!),
    lastThat(is(isColder(doubt), covered), MOST_PROPOSED_PCT, guesses[2]!),
  ]);
  const [coolTo, warmTo, even] = ends as [number, number, number];
  const anywhere = (yield* look(Math.max(0, even))).verdict;
  if (anywhere.status === 'not judged')
    return { cell: { span_pct: null, best: null, why: 'not judged' }, ends: null };
  const warmFrom = 100 - warmTo;
  const span: SpanCell['span_pct'] = warmTo >= 0 && warmFrom <= coolTo ? [warmFrom, coolTo] : null;
  const best = yield* bestOf(look, doubt, { even, span });
  const why = span ? null : whyNot(coolTo, warmTo);
  return { cell: { span_pct: span, best, why }, ends: [coolTo, warmTo, even] };
}

const isCoolEnough = ({ status }: Verdict): boolean => status !== 'hot' && status !== 'both';
const isWarmEnough = ({ status }: Verdict): boolean => status !== 'cold' && status !== 'both';

/** Whether the cold side is, weighed, the nearer one or as near. */
const isColder =
  (doubt: MarginDoubt) =>
  ({ hotMargin_K, coldMargin_K }: Verdict): boolean =>
    weighed_K({ hotMargin_K, coldMargin_K: Infinity }, doubt) >=
    weighed_K({ hotMargin_K: Infinity, coldMargin_K }, doubt);

function whyNot(coolTo: number, warmTo: number): NoSpan['why'] {
  if (coolTo < 0 && warmTo === 100) return 'hot when open';
  return warmTo < 0 && coolTo === 100 ? 'cold when closed' : 'swing';
}

/** Of the two percents between which the margins cross the better one; the nearest end of the span where it lies outside. */
function* bestOf(
  look: Look,
  doubt: MarginDoubt,
  { even, span }: { even: number; span: SpanCell['span_pct'] },
): Steps<MapBest> {
  const [low, high] = span ?? [0, 100];
  const most = Math.max(low, MOST_PROPOSED_PCT);
  const inside = (pct: number): number => Math.min(high, most, Math.max(low, pct));
  const tried = yield* together([inside(even), inside(even + 1)].map((pct) => bestAt(look, doubt, pct)));
  const [one, other] = tried as [MapBest, MapBest];
  return one.weighed_K >= other.weighed_K ? one : other;
}

function* bestAt(look: Look, doubt: MarginDoubt, blanking_pct: number): Steps<MapBest> {
  const { hotMargin_K, coldMargin_K } = (yield* look(blanking_pct)).verdict;
  return {
    blanking_pct,
    hotMargin_K,
    coldMargin_K,
    weighed_K: weighed_K({ hotMargin_K, coldMargin_K }, doubt),
  };
}
