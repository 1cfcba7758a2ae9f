/** Which corner speaks for an axle, and what it is called. */
import type { Axle, CornerResult, Scenario, StintResult } from '../../engine/index.ts';

/** The smaller of the two margins: how far this corner is from failing; negative when it has. */
const smallestMargin_K = ({ verdict }: CornerResult): number =>
  Math.min(verdict.hotMargin_K, verdict.coldMargin_K);

const hotterFirst = (a: CornerResult, b: CornerResult): number => b.facePeak_K - a.facePeak_K;

/** Outside its window on a lap that counts. */
export const isOut = ({ verdict }: CornerResult): boolean => ['hot', 'cold', 'both'].includes(verdict.status);

/** A side that is out goes first, whatever is forgiven the other; then the smaller margin. */
const nearestFirst = (a: CornerResult, b: CornerResult): number =>
  Number(isOut(b)) - Number(isOut(a)) || smallestMargin_K(a) - smallestMargin_K(b);

/** Of an axle whose sides differ, the side that is out or nearest to it; without a verdict the hotter one. */
export function cornerOf(result: StintResult, axle: Axle): CornerResult | undefined {
  const corners = result.corners.filter((corner) => corner.axle === axle);
  const judged = corners.filter(({ verdict }) => verdict.status !== 'not judged');
  return judged.sort(nearestFirst)[0] ?? corners.sort(hotterFirst)[0];
}

/** The corner at the side in hand; where both sides are alike, or none is in hand, the one that speaks for its axle. */
export const cornerInView = (
  result: StintResult,
  axle: Axle,
  side: 'left' | 'right' | null,
): CornerResult | undefined =>
  result.corners.find((corner) => corner.axle === axle && corner.side === side) ?? cornerOf(result, axle);

/** The side across the car, where the sides differ. */
export const otherSide = (result: StintResult, { axle, side }: CornerResult): CornerResult | undefined =>
  result.corners.find((corner) => corner.axle === axle && corner.side !== side);

/** "front" or, where the sides differ, "front left". */
export const cornerName = ({ axle, side }: Pick<CornerResult, 'axle' | 'side'>): string =>
  side === 'both' ? axle : `${axle} ${side}`;

/** Percent of the mouth that is covered at a corner, or null where there is no duct. */
export function blankingOf(
  scenario: Scenario,
  { axle, side }: Pick<CornerResult, 'axle' | 'side'>,
): number | null {
  if (!scenario.brakes[axle].duct) return null;
  const own = scenario.blanking_pct[`${axle}_${side === 'both' ? 'left' : side}`];
  return own ?? scenario.blanking_pct[axle];
}
