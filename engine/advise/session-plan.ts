/** What the set and its rule give one session. */
import type { Session } from '../scenario/event-schema.ts';
import type { LikelyCondition } from './likely-conditions.ts';
import type { Fitted } from './panel-table.ts';

/** What the rule fits on some of the days: places in the set. */
export interface SessionFit {
  panel: number;
  /** Chance that the rule fits it [-] */
  chance: number;
  /**
   * What to start with where a stop is planned, for tape comes off at a stop and hardly goes on: one panel more closed, unless
   * that would be too hot on one of these days. The same panel without a stop.
   */
  start: number;
  /** How far past its hot limits the next more closed panel would go on the worst of these days; null: not past, or none there [K] */
  closerTooHot_K: number | null;
}

export interface SessionPlan {
  name: string;
  /** Chance that the session is driven in the window: with the best of the set, and with what the rule says [-] */
  bestCovered: number;
  covered: number;
  /** The likeliest first. */
  fits: SessionFit[];
  /** Chance of the window with what is started with, up to the stop; null where none is planned [-] */
  beforeStop: number | null;
}

interface Known {
  conditions: readonly LikelyCondition[];
  /** By condition, then by panel of the set. */
  rows: readonly (readonly Fitted[])[];
  /** Of each condition: what the rule fits, and what would be best. */
  fitted: readonly number[];
  best: readonly number[];
}

export function sessionPlan({ name, stops }: Session, at: number, known: Known): SessionPlan {
  const { conditions, rows, fitted, best } = known;
  const all = conditions.map((_, c) => c);
  const chanceOf = (days: readonly number[]): number =>
    days.reduce((sum, c) => sum + conditions[c]!.inSession[at]!, 0);
  const chanceIn = (days: readonly number[], panelOn: (c: number) => number): number =>
    chanceOf(days.filter((c) => rows[c]![panelOn(c)]!.status === 'in'));
  const fits = rows[0]!
    .map((_, panel): SessionFit => {
      const days = all.filter((c) => fitted[c] === panel && conditions[c]!.inSession[at]! > 0);
      const closer = Math.min(rows[0]!.length - 1, panel + 1);
      const closerTooHot_K = closer === panel ? null : tooHot_K(days.map((c) => rows[c]![closer]!));
      const start = stops && closerTooHot_K === null ? closer : panel;
      return { panel, chance: chanceOf(days), start, closerTooHot_K };
    })
    .filter(({ chance }) => chance > 0)
    .sort((a, b) => b.chance - a.chance);
  const startOn = (c: number): number => fits.find(({ panel }) => panel === fitted[c])!.start;
  const own = all.filter((c) => conditions[c]!.inSession[at]! > 0);
  return {
    name,
    bestCovered: chanceIn(all, (c) => best[c]!),
    covered: chanceIn(all, (c) => fitted[c]!),
    fits,
    beforeStop: stops ? chanceIn(own, startOn) : null,
  };
}

function tooHot_K(days: readonly Fitted[]): number | null {
  const hot = days.filter(({ status }) => status === 'hot' || status === 'both');
  return hot.length === 0 ? null : Math.max(...hot.map(({ hotMargin_K }) => -hotMargin_K));
}
