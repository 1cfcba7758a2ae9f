/** How sure the answer is, in words: how many runs stay in with every unsure value varied, and what to measure first. */
import type {
  Axle,
  CornerResult,
  CornerSensitivity,
  CornerSpread,
  Scenario,
  Spread,
} from '../../engine/index.ts';
import { isCalibrated } from '../../engine/scenario/calibrated.ts';
import { nameOf } from '../../engine/scenario/key-name.ts';
import { cornerName } from './corner.ts';
import { kelvins, NBSP } from './format.ts';

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
  return `${start} ${found.unknowns} unsure values varied, ${countWords(found.draws, first, others)}.`;
}

/** "64 of 100 runs keep the front discs in (36 too hot), 90 the rear" */
function countWords(draws: number, first: CornerSpread, others: readonly CornerSpread[]): string {
  const keep = first.count.in === 1 ? 'runs keeps' : 'runs keep';
  // sides that differ take the room of all but the way that most fail
  const ways = waysOf(first).slice(0, others.length > 1 ? 1 : undefined);
  const failed = ways.length > 0 ? ` (${ways.join(', ')})` : '';
  const more = others.map(
    (other, i) => `, ${other.count.in} the ${nameAfter(other, others[i - 1] ?? first)}`,
  );
  return `${first.count.in} of${NBSP}${draws} ${keep} the ${discs(first)} in${failed}${more.join('')}`;
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

const isCounted = (found: FoundSpread): boolean =>
  found !== null && (typeof found === 'string' || found.unknowns > 0);

/**
 * For the corner in view: "Measure first: inlet recovery (±29 K)." Between the count and this, that it is being found.
 * Empty before, and where nothing matters.
 */
export function measureFirstNote(
  found: readonly CornerSensitivity[] | string | null,
  at: { axle: Axle; side: CornerResult['side'] },
  spread: FoundSpread,
): string {
  if (found === null) return isCounted(spread) ? 'Finding what to measure first.' : '';
  if (typeof found === 'string') return '';
  const first = found.find(({ axle, side }) => axle === at.axle && side === at.side)?.measureFirst;
  return first ? `Measure first: ${nameOf(first.key)} (±${kelvins(first.moves_K)}).` : '';
}
