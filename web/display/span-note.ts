/** Why the safe span ends where it does, for under the chart's title. */
import type { SafeSpan, SpanBound } from '../../engine/index.ts';
import { kelvins, NBSP, percent } from './format.ts';
import { misses, remedyWords, spanRange } from './span-words.ts';

/** What bounds an end: "below, turn 11 starts under bite on lap 5" */
function boundWords(where: 'below' | 'above', end: SpanBound | null): string {
  if (!end) return where === 'below' ? 'fully open is safe' : 'fully closed is safe';
  const { limit, place, lap } = end;
  const what = {
    bite: `${place || 'a hard stop'} starts under bite`,
    run: 'the mean of the lap is too cold',
    'face peak': `${place || 'the face'} passes the face peak`,
    bulk: `the bulk passes its limit${place && ` at ${place}`}`,
  };
  return `${where}, ${what[limit]} on lap${NBSP}${lap}`;
}

/** Why the span ends where it does, or what was tried where there is none; empty where nothing is to say. */
export function spanNote(span: SafeSpan): string {
  if (span.isIdle) return '';
  const { span_pct, low, high, none, best } = span.before ?? span;
  if (span_pct) {
    const later = span.before ? ` No first blanking holds the laps from ${span.before.lap} on.` : '';
    return `Safe ${spanRange(span_pct)}: ${boundWords('below', low)}; ${boundWords('above', high)}.${later}`;
  }
  if (!none || !best) return '';
  const gains = none.remedies.map((remedy) => `${remedyWords(remedy)} ${kelvins(remedy.gain_K)}`);
  const help = gains.length > 0 ? ` Would gain: ${gains.join('; ')}.` : '';
  return `Least bad ${percent(best.blanking_pct)}: ${misses(best)}.${help}`;
}
