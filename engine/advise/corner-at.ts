import type { CornerResult } from '../stint/result.ts';

type Place = Pick<CornerResult, 'axle' | 'side'>;

/** The corner at a place; sides that have become equal are one corner for both. */
export function cornerAt<Corner extends Place>(corners: readonly Corner[], { axle, side }: Place): Corner {
  const found = corners.find((corner) => corner.axle === axle && [side, 'both'].includes(corner.side));
  if (!found) throw new Error(`no corner: ${axle} ${side}`);
  return found;
}
