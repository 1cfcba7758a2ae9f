/** How sure the answer is, in words: how many runs stay in with every unsure value varied. */
import type { CornerResult, CornerSpread, Scenario, Spread } from '../../engine/index.ts';
import { isCalibrated } from '../../engine/scenario/calibrated.ts';
import { cornerName } from './corner.ts';
import { NBSP } from './format.ts';

/** The spread of the same scenario; null while it is computed, a sentence where that failed. */
export type FoundSpread = Spread | string | null;

/** Letters of the longest of these sentences where sides are alike, but a failure: their place is kept while the runs are awaited. */
export const DOUBT_LETTERS = 133;

type Place = Pick<CornerResult, 'axle' | 'side'>;

/** How far the runs are, after the sentence that says they are under way: " 40 of 100 runs done." */
export const drawnWords = (drawn: { done: number; of: number } | null): string =>
  drawn ? ` ${drawn.done} of${NBSP}${drawn.of} runs done.` : '';

/** Of these corners, the one that leads first: "With 61 unsure values varied, 64 of 100 runs keep the front discs in (36 too hot), 90 the rear." */
export function doubtSentence(
  corners: readonly CornerResult[],
  found: FoundSpread,
  scenario: Scenario,
): string {
  const isNot = !isCalibrated(scenario);
  const tail = isNot ? '; not calibrated' : '';
  const judged = corners.filter(({ verdict }) => verdict.status !== 'not judged');
  if (judged.length === 0) return isNot ? 'Not calibrated.' : '';
  if (found === null) return `Its doubt is being computed${tail}.`;
  if (typeof found === 'string') return `${found}${isNot ? ' Not calibrated.' : ''}`;
  if (found.unknowns === 0) return `Nothing here is in doubt${tail}.`;
  const [first, ...others] = judged.flatMap((corner) => runsOf(found, corner) ?? []);
  if (!first) return isNot ? 'Not calibrated.' : '';
  const start = isNot ? 'Not calibrated: with' : 'With';
  return `${start} ${found.unknowns} unsure values varied, ${countWords(first, others)}.`;
}

/** How many of the draws keep the corner in: what the sentence counts, and what the squares show. */
export function staysIn({ count }: Pick<CornerSpread, 'count'>): { runs: number; of: number } {
  return { runs: count.in, of: count.in + count.hot + count.cold + count.both + count.notJudged };
}

/** "64 of 100 runs" */
export function runsIn(count: CornerSpread['count']): string {
  const { runs, of } = staysIn({ count });
  return `${runs} of${NBSP}${of} runs`;
}

/** "64 of 100 runs keep the front discs in (36 too hot), 90 the rear" */
function countWords(first: CornerSpread, others: readonly CornerSpread[]): string {
  const { runs, of } = staysIn(first);
  const keep = runs === 1 ? 'runs keeps' : 'runs keep';
  // sides that differ take the room of all but the way that most fail
  const ways = waysOf(first).slice(0, others.length > 1 ? 1 : undefined);
  const failed = ways.length > 0 ? ` (${ways.join(', ')})` : '';
  const more = others.map(
    (other, i) => `, ${staysIn(other).runs} the ${nameAfter(other, others[i - 1] ?? first)}`,
  );
  return `${runs} of${NBSP}${of} ${keep} the ${discs(first)} in${failed}${more.join('')}`;
}

/** "front discs", or the side where they differ */
const discs = (at: Place): string => (at.side === 'both' ? `${at.axle} discs` : cornerName(at));
/** "rear", "rear left", and just "right" after that */
const nameAfter = (at: Place, last: Place): string => (at.axle === last.axle ? at.side : cornerName(at));

const runsOf = ({ corners }: Spread, at: Place): CornerSpread | undefined =>
  corners.find(({ axle, side }) => axle === at.axle && side === at.side);

/** Which way the others fail, the way of most first: "72 too hot", "1 too cold" */
function waysOf({ count }: CornerSpread): string[] {
  const ways = [
    [count.hot, 'too hot'],
    [count.cold, 'too cold'],
    [count.both, 'both'],
    [count.notJudged, 'not judged'],
  ] as const;
  return ways
    .filter(([runs]) => runs > 0)
    .sort(([a], [b]) => b - a)
    .map(([runs, way]) => `${runs} ${way}`);
}
