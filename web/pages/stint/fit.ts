/** Fits what is proposed, as one named step. */
import type { CornerResult } from '../../../engine/index.ts';
import { cornerName } from '../../display/corner.ts';
import type { Session } from '../../state/session.svelte.ts';
import { blankingKey } from '../../state/sides.ts';

export function fit(
  session: Session,
  corner: Pick<CornerResult, 'axle' | 'side'>,
  blanking_pct: number,
): void {
  const key = blankingKey(corner.axle, corner.side === 'both' ? null : corner.side);
  session.change({ [key]: blanking_pct }, `${cornerName(corner)} blanking`);
  session.settle();
}
