/** The safe span of a corner as one line of a terminal's table. */
import { drawsIn } from '../advise/doubt.ts';
import type { NoSpan, Spare, SpanBound } from '../advise/span.ts';
import type { CornerRecord } from './summary.ts';

export function spanLine(name: string, { safeSpan_pct, span }: CornerRecord): string {
  if (!span) return `${name}: safe span not searched`;
  if (span.isIdle) {
    return `${name}: what is fitted first decides no counted lap, the blanking changes on lap ${span.changesOn}`;
  }
  if (safeSpan_pct) {
    const [low, high] = safeSpan_pct;
    const ends = [bound('below', span.low), bound('above', span.high)].filter(Boolean).join('; ');
    return `${name}: safe on counted laps from ${low} to ${high} % blanked${ends && ` (${ends})`}${fit(span.proposal)}`;
  }
  if (span.before?.span_pct) {
    const { lap, span_pct, proposal } = span.before;
    return `${name}: safe before lap ${lap}, where the blanking changes, from ${span_pct[0]} to ${span_pct[1]} %${fit(proposal)}; no first blanking holds the laps after it`;
  }
  if (span.none) return `${name}: no safe span, ${why(span.none, span.best)}`;
  return `${name}: no safe span${span.reason && `, ${span.reason}`}`;
}

function bound(where: string, end: SpanBound | null): string {
  return end ? `${where}: ${end.limit}${end.place && ` at ${end.place}`} on lap ${end.lap}` : '';
}

function fit(spare: Spare | null): string {
  if (!spare) return '; its blank cannot be cut that open';
  const margin_K = Math.min(spare.hotMargin_K, spare.coldMargin_K);
  const words = margin_K >= 0 ? `${margin_K.toFixed(0)} K to spare` : excess(spare);
  const { count } = spare;
  const runs = count ? `, ${count.in} of ${drawsIn(count)} runs stay in` : '';
  return `; fit ${Number(spare.blanking_pct.toFixed(1))} %, ${words}${runs}`;
}

/** What the window forgives: no other limit may be passed for a moment. */
function excess({ hotMargin_K, coldMargin_K }: Spare): string {
  const what =
    hotMargin_K <= coldMargin_K
      ? `${(-hotMargin_K).toFixed(0)} K over face peak`
      : `${(-coldMargin_K).toFixed(0)} K under bite`;
  return `${what}, within the short excess allowed`;
}

function why({ why: kind, swing_K, width_K, hotLimit, coldLimit }: NoSpan, best: Spare | null): string {
  const least = best ? `; least bad ${best.blanking_pct} %, ${misses(best)}` : '';
  const isSwing = swing_K !== null && swing_K > width_K;
  const reason = isSwing
    ? ` (swing ${swing_K.toFixed(0)} K, window ${width_K.toFixed(0)} K)`
    : ` (${coldLimit} against ${hotLimit})`;
  const words = {
    'hot when open': 'too hot even fully open',
    'cold when closed': 'too cold even fully closed',
    swing: `too cold wherever it is not too hot${reason}`,
  };
  return words[kind] + least;
}

function misses({ hotMargin_K, coldMargin_K }: Spare): string {
  return [
    hotMargin_K < 0 ? `too hot by ${(-hotMargin_K).toFixed(0)} K` : '',
    coldMargin_K < 0 ? `too cold by ${(-coldMargin_K).toFixed(0)} K` : '',
  ]
    .filter(Boolean)
    .join(' and ');
}
