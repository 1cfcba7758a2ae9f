/** The plan of one axle from how its candidates do. Pure arithmetic of the table. */
import type { Session, SetWanted } from '../scenario/event-schema.ts';
import { panelLetter } from '../scenario/tape.ts';
import type { Axle } from '../stint/result.ts';
import { bestRule, panelBy, type Rule, type Seen } from './fitting-rule.ts';
import type { LikelyCondition } from './likely-conditions.ts';
import type { MarginDoubt } from './margin-doubt.ts';
import { joined } from './paired-sides.ts';
import { bestSet, type ChosenPanel } from './panel-set.ts';
import type { AxleTables, Covering, Fitted } from './panel-table.ts';
import { bestFit, costsOf, daysOf, regretsOf, type Regret } from './regret.ts';
import { ruleLines, type RuleLine } from './rule-lines.ts';
import { sessionPlan, type SessionPlan } from './session-plan.ts';

/** An open mouth stands first and has no letter. */
export interface PlannedPanel extends ChosenPanel {
  /** What it covers on each side where they differ; else null [%] */
  sides_pct: Covering | null;
  /** How much hotter the hottest face is than with the one before, on the likely mean [K] */
  step_K: number;
}

/** A likely condition that no panel of the set keeps in, and the least bad of them. */
export interface Uncovered extends Pick<Fitted, 'status' | 'hotMargin_K' | 'coldMargin_K'> {
  condition: number;
  panel: number;
}

/** A likely condition that the set keeps in and the rule does not, for it has few lines. */
export interface Missed {
  condition: number;
  fitted: number;
  best: number;
}

export interface AxlePlan {
  axle: Axle;
  doubts: MarginDoubt[];
  /** Places elsewhere are places in this list. */
  panels: PlannedPanel[];
  /** Share of the likely conditions that one of these keeps in, and of these the smallest weighed margin; null: none is kept in. */
  covered: number;
  worst_K: number | null;
  uncovered: Uncovered[];
  /** Under each condition the one to fit: places in the set. */
  best: number[];
  rule: {
    lines: RuleLine[];
    thresholds: number;
    /** Share of the likely conditions that it keeps in, and the mean weighed margin that it gives away [K] */
    covered: number;
    regret_K: number;
    missed: Missed[];
  };
  sessions: SessionPlan[];
  /** Conditions that stand for days, and under each what every panel would do. */
  days: { condition: number; fitted: Regret[] }[];
}

export interface Known {
  candidates: readonly number[];
  conditions: readonly LikelyCondition[];
  borders_C: readonly number[];
  sessions: readonly Session[];
  set: SetWanted;
}

export function axlePlan(tables: AxleTables, known: Known): AxlePlan {
  const { candidates, conditions, borders_C, sessions, set } = known;
  const weights = conditions.map(({ weight }) => weight);
  const { coverings, rows: all } = joined(tables, candidates, weights);
  const heats_K = candidates.map((_, i) => sumOf(all, weights, (row) => row[i]!.hottest_K));
  const { places, worst_K } = bestSet(
    { rows: all, weights, heats_K },
    Math.min(set.panels, candidates.length - 1),
  );
  const chosen = [0, ...places];
  const rows = all.map((row) => chosen.map((place) => row[place]!));
  const seen = conditions.map(({ cell, gap_m, isWet, weight }, c): Seen => {
    return { cell, isFollowing: gap_m !== null, isWet, costs: costsOf(rows[c]!, weight) };
  });
  const rule = bestRule(seen);
  const fitted = seen.map((each) => panelBy(rule, each));
  const isIn = (c: number, panel: number): boolean => rows[c]![panel]!.status === 'in';
  const best = rows.map(bestFit);
  const shareIn = (panels: readonly number[]): number =>
    sumOf(panels, weights, (panel, c) => (isIn(c, panel) ? 1 : 0));
  const places_ = conditions.map((_, c) => c);
  return {
    axle: tables.axle,
    doubts: tables.sides.map(({ doubt }) => doubt),
    panels: chosen.map((place, i) => ({
      ...panelAt(candidates[place]!, coverings[place]!, i),
      step_K: i === 0 ? 0 : heats_K[place]! - heats_K[chosen[i - 1]!]!,
    })),
    covered: shareIn(best),
    worst_K,
    uncovered: places_.filter((c) => !isIn(c, best[c]!)).map((c) => uncoveredAt(c, best[c]!, rows[c]!)),
    best,
    rule: {
      lines: ruleLines(rule, { seen, borders_C }),
      thresholds: rule.thresholds,
      covered: shareIn(fitted),
      regret_K: regretOf(rule),
      missed: places_
        .filter((c) => isIn(c, best[c]!) && !isIn(c, fitted[c]!))
        .map((condition) => ({ condition, fitted: fitted[condition]!, best: best[condition]! })),
    },
    sessions: sessions.map((session, s) => sessionPlan(session, s, { conditions, rows, fitted, best })),
    days: daysOf(conditions).map((condition) => ({ condition, fitted: regretsOf(rows[condition]!) })),
  };
}

/** The set's letters begin at its most open panel. */
function panelAt(
  pct: number,
  covering: Covering,
  place: number,
): Pick<PlannedPanel, 'letter' | 'blanking_pct' | 'sides_pct'> {
  const isOneSize = Object.values(covering).every((each) => each === pct);
  return {
    letter: place === 0 ? '' : panelLetter(place - 1),
    blanking_pct: pct,
    sides_pct: isOneSize ? null : covering,
  };
}

function uncoveredAt(condition: number, panel: number, row: readonly Fitted[]): Uncovered {
  const { status, hotMargin_K, coldMargin_K } = row[panel]!;
  return { condition, panel, status, hotMargin_K, coldMargin_K };
}

/** From millionths times tenths of a kelvin [K] */
const regretOf = ({ cost }: Rule): number => cost.regret / 1e7;

const sumOf = <T>(
  of: readonly T[],
  weights: readonly number[],
  value: (each: T, i: number) => number,
): number => of.reduce((sum, each, i) => sum + weights[i]! * value(each, i), 0);
