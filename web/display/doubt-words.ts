/** How sure the answer is, in words: how many draws stay in, and what to measure first. */
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

const NOT_CALIBRATED = 'not calibrated';

/** Letters of the longest of these sentences but a failure: their place is kept while the draws are awaited. */
export const DOUBT_LETTERS = 95;

type Place = Pick<CornerResult, 'axle' | 'side'>;

/** Of these corners, the one that leads first: "In 64 of 100 draws of what we do not know the fronts stay in, in 90 the rears." */
export function doubtSentence(
  corners: readonly CornerResult[],
  found: FoundSpread,
  scenario: Scenario,
): string {
  const tail = isCalibrated(scenario) ? '' : `; ${NOT_CALIBRATED}`;
  const judged = corners.filter(({ verdict }) => verdict.status !== 'not judged');
  if (judged.length === 0) return tail ? 'Not calibrated.' : '';
  if (found === null) return `Its doubt is being computed${tail}.`;
  if (typeof found === 'string') return `${found}${tail ? ' Not calibrated.' : ''}`;
  if (found.unknowns === 0) return `Nothing here is in doubt${tail}.`;
  const [first, ...others] = judged.flatMap((corner) => drawsOf(found, corner) ?? []);
  if (!first) return tail ? 'Not calibrated.' : '';
  const lead = `In ${first.count.in} of${NBSP}${found.draws} draws of what we do not know ${wheels(first)} ${stay(first)} in`;
  const more = others.map((other) => `, in ${other.count.in} ${wheels(other)}`).join('');
  return `${lead}${more}${tail}.`;
}

const drawsOf = ({ corners }: Spread, at: Place): CornerSpread | undefined =>
  corners.find(({ axle, side }) => axle === at.axle && side === at.side);

/** "the fronts", or the side where they differ */
const wheels = ({ axle, side }: Place): string =>
  side === 'both' ? `the ${axle}s` : `the ${cornerName({ axle, side })}`;
const stay = ({ side }: Place): string => (side === 'both' ? 'stay' : 'stays');

/** For the corner in view: "Measure first: inlet recovery (±29 K)." Empty while it is not known, or nothing matters. */
export function measureFirstNote(
  found: readonly CornerSensitivity[] | string | null,
  at: { axle: Axle; side: CornerResult['side'] },
): string {
  if (found === null || typeof found === 'string') return '';
  const first = found.find(({ axle, side }) => axle === at.axle && side === at.side)?.measureFirst;
  return first ? `Measure first: ${nameOf(first.key)} (±${kelvins(first.moves_K)}).` : '';
}
