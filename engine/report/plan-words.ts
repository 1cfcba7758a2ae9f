/** The plan of an event in words, as a terminal and a record have them. */
import type { RuleCase } from '../advise/rule-lines.ts';
import type { SessionFit } from '../advise/session-plan.ts';
import type { Verdict } from '../stint/result.ts';

/** "below 18 °C and clear air, or following" */
export const ruleWords = (when: readonly RuleCase[]): string => when.map(caseWords).join(', or ');

function caseWords({ above_C, below_C, isFollowing, isWet }: RuleCase): string {
  const parts = [
    ambientWords(above_C, below_C),
    isFollowing === null ? '' : isFollowing ? 'following' : 'clear air',
    isWet === null ? '' : isWet ? 'wet' : 'dry',
  ];
  return parts.filter(Boolean).join(' and ') || 'always';
}

function ambientWords(above_C: number | null, below_C: number | null): string {
  if (above_C !== null && below_C !== null) return `${above_C} to ${below_C} °C`;
  if (above_C !== null) return `above ${above_C} °C`;
  return below_C === null ? '' : `below ${below_C} °C`;
}

/** "in, 12 K to spare", "58 K too hot" */
export function doneWords({
  status,
  hotMargin_K,
  coldMargin_K,
}: Pick<Verdict, 'status' | 'hotMargin_K' | 'coldMargin_K'>): string {
  if (status === 'not judged') return 'not judged: no counted lap, or none with a hard stop';
  if (status === 'in') {
    const spare = Math.min(hotMargin_K, coldMargin_K);
    return spare >= 0 ? `in, ${whole(spare)} K to spare` : 'in, within the short excess allowed';
  }
  const hot = `${whole(-hotMargin_K)} K too hot`;
  const cold = `${whole(-coldMargin_K)} K too cold`;
  return status === 'both' ? `${hot} and ${cold}` : status === 'hot' ? hot : cold;
}

/** What to start with where a stop is planned. */
export function startWords(
  { panel, start, closerTooHot_K }: SessionFit,
  fitOf: (panel: number) => string,
): string {
  if (start !== panel) return `start with ${fitOf(start)}, one more closed: it comes off at the stop`;
  if (closerTooHot_K === null) return `start with ${fitOf(panel)}: the set has nothing more closed`;
  return `start with ${fitOf(panel)}: one more closed would be ${whole(closerTooHot_K)} K too hot before the stop`;
}

const whole = (value_K: number): string => value_K.toFixed(0).replace('-0', '0');
