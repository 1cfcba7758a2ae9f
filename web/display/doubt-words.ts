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
  const discs = first.side === 'both' ? 'discs' : 'disc';
  const runs = first.count.in === 1 ? 'runs keeps' : 'runs keep';
  const lead = `${start} ${found.unknowns} unsure values varied, ${first.count.in} of${NBSP}${found.draws} ${runs} the ${cornerName(first)} ${discs} in${failed(first)}`;
  const more = others.map((other) => `, ${other.count.in} the ${cornerName(other)}`);
  return `${lead}${more.join('')}.`;
}

const runsOf = ({ corners }: Spread, at: Place): CornerSpread | undefined =>
  corners.find(({ axle, side }) => axle === at.axle && side === at.side);

/** Which way the others fail: " (72 too hot, 1 too cold)" */
function failed({ count }: CornerSpread): string {
  const ways = [
    [count.hot, 'too hot'],
    [count.cold, 'too cold'],
    [count.both, 'both'],
    [count.notJudged, 'not judged'],
  ] as const;
  const told = ways.filter(([runs]) => runs > 0).map(([runs, way]) => `${runs} ${way}`);
  return told.length > 0 ? ` (${told.join(', ')})` : '';
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
