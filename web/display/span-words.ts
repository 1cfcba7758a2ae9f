/** The safe span in words: how far the blanking may go, what to fit, and why where nothing holds. */
import type {
  Axle,
  CornerResult,
  CornerSpread,
  NoSpan,
  Remedy,
  SafeSpan,
  Spare,
} from '../../engine/index.ts';
import { panelLetter } from '../../engine/scenario/tape.ts';
import { ALLOWED, excessWords } from './allowed-words.ts';
import { runsIn } from './doubt-words.ts';
import { decimal, kelvins, NBSP, percent, withUnit } from './format.ts';

export const spanOf = (
  spans: readonly SafeSpan[],
  { axle, side }: Pick<CornerResult, 'axle' | 'side'>,
): SafeSpan | undefined => spans.find((span) => span.axle === axle && span.side === side);

/** The spans of the corners that one lever moves: of both sides, or of the side in hand. */
export const spansOfLever = (
  spans: readonly SafeSpan[],
  axle: Axle,
  side: 'left' | 'right' | null,
): SafeSpan[] =>
  spans.filter((span) => span.axle === axle && (side === null || span.side === 'both' || span.side === side));

/** What keeps all the corners that a lever moves in; null where nothing does, or it is not known. */
export function safeTogether(spans: readonly SafeSpan[]): [low: number, high: number] | null {
  const known = spans.filter(({ isIdle }) => !isIdle);
  const edges = safeEdges(known);
  const isWhole = known.every((span) => (span.before ?? span).span_pct !== null);
  if (!edges || !isWhole || edges.warmFrom_pct > edges.coolTo_pct) return null;
  return [edges.warmFrom_pct, edges.coolTo_pct];
}

/** What to fit at a corner, and its draws where they were made; null where it would not keep it in. */
export function proposedFor(span: SafeSpan): { spare: Spare; drawn: CornerSpread | null } | null {
  const { span_pct, proposal: spare, drawn } = span.before ?? span;
  return span_pct && spare && !span.isIdle ? { spare, drawn } : null;
}

/** The same at a lever, in percent; null as well where it moves more than one corner. */
export const proposedAt = ([span, ...others]: readonly SafeSpan[]): number | null =>
  (span && others.length === 0 ? proposedFor(span)?.spare.blanking_pct : null) ?? null;

/**
 * The least blanking that keeps all of them from too cold and the most that keeps all from too hot, in percent; the first is
 * above the second where none does both. null where nothing is judged.
 */
export function safeEdges(spans: readonly SafeSpan[]): { warmFrom_pct: number; coolTo_pct: number } | null {
  const ends = spans.flatMap((span) => {
    if (span.isIdle) return [];
    const { span_pct, none } = span.before ?? span;
    if (span_pct) return [{ warm: span_pct[0], cool: span_pct[1] }];
    return none ? [{ warm: none.warmFrom_pct ?? 100, cool: none.coolTo_pct ?? 0 }] : [];
  });
  if (ends.length === 0) return null;
  return {
    warmFrom_pct: Math.max(...ends.map(({ warm }) => warm)),
    coolTo_pct: Math.min(...ends.map(({ cool }) => cool)),
  };
}

/** "54 to 61 %": whole percent, rounded inwards; with a decimal where less than that is between them. */
export function spanRange([low, high]: readonly [number, number]): string {
  const [from, to] = [Math.ceil(low - 1e-9), Math.floor(high + 1e-9)];
  if (from === to) return `${percent(from)} alone`;
  return from < to
    ? `${from} to${NBSP}${percent(to)}`
    : `${decimal(low, 1)} to${NBSP}${decimal(high, 1)}${NBSP}%`;
}

/** "fit panel C (60 %)" or "fit 57 %" */
export const fittedName = ({ blanking_pct, panel }: Spare): string =>
  panel === null ? percent(blanking_pct) : `panel${NBSP}${panelLetter(panel)} (${percent(blanking_pct)})`;

type Margins = Pick<Spare, 'hotMargin_K' | 'coldMargin_K'>;

/** "8 K to spare", or what the window forgives: "3 K under bite, within the short excess allowed" */
function spareWords(margins: Margins): string {
  const least_K = Math.min(margins.hotMargin_K, margins.coldMargin_K);
  if (least_K >= 0) return `${kelvins(least_K)} to spare`;
  return `${excessWords(margins)}, ${ALLOWED}`;
}

/**
 * For the axle that leads: "Safe on counted laps from 54 to 61 %; fit 57 %, 8 K to spare, 35 of 100 runs in." Empty where
 * nothing is to say.
 *
 * @param isCounted - whether the runs are told where they were made
 */
export function spanSentence(span: SafeSpan, isCounted = true): string {
  const { span_pct, proposal, none, best, before } = span;
  if (span.isIdle)
    return `What is fitted first decides no counted lap: the blanking changes on lap${NBSP}${span.changesOn}.`;
  if (before?.span_pct) {
    return `Before lap${NBSP}${before.lap} safe from ${spanRange(before.span_pct)}${fitWords(before.proposal, isCounted)}.`;
  }
  if (none && best) return noSpanSentence(none, best);
  if (!span_pct) return '';
  const until = span.changesOn === null ? '' : `, fitted until lap${NBSP}${span.changesOn},`;
  return `Safe on counted laps${until} from ${spanRange(span_pct)}${fitWords(proposal, isCounted)}.`;
}

function fitWords(spare: Spare | null, isCounted: boolean): string {
  if (!spare) return '; its blank cannot be cut that open';
  const runs = isCounted && spare.count ? `, ${runsIn(spare.count)} in` : '';
  const beyond = spare.blanking_pct > PRACTICE_PCT ? ', beyond practice' : '';
  return `; fit ${fittedName(spare)}, ${spareWords(spare)}${runs}${beyond}`;
}

/** More than this is out of practice: fluid, bearing and pad still need air. Common practice, no source. */
const PRACTICE_PCT = 85;

/** For the other axle, after its verdict: "; safe from 16 to 78 %", "; safe up to 78 %" */
export function spanClause({ span_pct, none, before, isIdle }: SafeSpan): string {
  if (isIdle) return '';
  if (before?.span_pct) return `; before lap${NBSP}${before.lap} safe from ${spanRange(before.span_pct)}`;
  if (!span_pct) return none ? '; no blanking is safe' : '';
  return span_pct[0] > 0
    ? `; safe from ${spanRange(span_pct)}`
    : `; safe up to ${percent(Math.floor(span_pct[1]))}`;
}

function noSpanSentence(none: NoSpan, best: Spare): string {
  const [first] = none.remedies;
  const help = first ? `; ${remedyWords(first)} would gain ${kelvins(first.gain_K)}` : '';
  switch (none.why) {
    case 'hot when open':
      return `Too hot even fully open${help}.`;
    case 'cold when closed':
      return `Too cold even fully closed${help}.`;
    case 'swing': {
      // one that would leave it out all the same stands in the note under the chart alone
      const holds = first !== undefined && first.gain_K + Math.min(best.hotMargin_K, best.coldMargin_K) >= 0;
      return `No blanking holds both${bothWords(none)}; least bad ${percent(best.blanking_pct)}, ${misses(best)}${holds ? help : ''}.`;
    }
  }
}

/** What the two ask for that no blanking gives: the swing where it is wider than the window, else the limits by name. */
function bothWords({ swing_K, width_K, hotLimit, coldLimit }: NoSpan): string {
  if (swing_K !== null && swing_K > width_K && hotLimit === 'face peak' && coldLimit === 'bite') {
    return `: swing ${kelvins(swing_K)}, window ${kelvins(width_K)}`;
  }
  const names = {
    bite: 'bite',
    run: 'the lowest mean of a lap',
    'face peak': 'the face peak',
    bulk: 'the bulk',
  };
  return `, ${names[coldLimit]} and ${names[hotLimit]}`;
}

/** "50 K too hot and 47 K too cold" */
export function misses({ hotMargin_K, coldMargin_K }: Margins): string {
  const ways = [
    hotMargin_K < 0 ? `${kelvins(hotMargin_K)} too hot` : '',
    coldMargin_K < 0 ? `${kelvins(coldMargin_K)} too cold` : '',
  ].filter(Boolean);
  return ways.length > 0 ? ways.join(' and ') : spareWords({ hotMargin_K, coldMargin_K });
}

/** "braking 10 % softer", "one hose more" */
export function remedyWords({ key, from, to }: Remedy): string {
  const last = key.split('.').at(-1) ?? '';
  if (last.startsWith('grip_share_braking')) return `braking ${percent(100 * (1 - to / from))} softer`;
  if (last === 'brake_balance_front') return `brake balance at ${decimal(100 * to, 1)}${NBSP}% front`;
  if (last === 'cheek_mm') return `cheeks ${withUnit(to - from, 'mm', 1)} thicker`;
  if (last === 'hoses') return 'one hose more';
  if (last === 'leak_cm2') return `the leak sealed to ${withUnit(to, 'cm²')}`;
  return `${key} at ${to}`;
}
