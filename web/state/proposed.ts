/** The scenario with what is proposed fitted wherever that is something else. Pure. */
import type { Changes, SafeSpan, Scenario } from '../../engine/index.ts';
import { withChanges } from '../../engine/scenario/changes.ts';
import { blankingKey, shareAt } from './sides.ts';

/** null where everything proposed is fitted, or nothing is proposed. */
export function proposedFor(scenario: Scenario, spans: readonly SafeSpan[]): Scenario | null {
  const changes: Record<string, number> = {};
  for (const span of spans) {
    const { span_pct, proposal } = span.before ?? span;
    const side = span.side === 'both' ? null : span.side;
    if (span.isIdle || !span_pct || !proposal) continue;
    if (shareAt(scenario, span.axle, side) !== proposal.blanking_pct)
      changes[blankingKey(span.axle, side)] = proposal.blanking_pct;
  }
  return Object.keys(changes).length > 0 ? withChanges(scenario, changes satisfies Changes) : null;
}
