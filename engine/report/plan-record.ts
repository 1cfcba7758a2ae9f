/** The plan of an event as one object for `--json`, in the trade's units and with words for what a person reads. */
import type { AxlePlan } from '../advise/axle-plan.ts';
import type { LikelyCondition } from '../advise/likely-conditions.ts';
import type { Plan } from '../advise/plan.ts';
import type { RuleCase } from '../advise/rule-lines.ts';
import type { Axle, Verdict } from '../stint/result.ts';
import { doneWords, ruleWords, startWords } from './plan-words.ts';

interface Margins {
  status: Verdict['status'];
  /** null: no limit on that side [K] */
  hotMargin_K: number | null;
  coldMargin_K: number | null;
}

interface Done extends Margins {
  words: string;
}

export interface AxlePlanRecord {
  set: {
    /** "open" stands first and is no panel. */
    letter: string;
    blanking_pct: number;
    /** Where left and right differ. */
    sides_pct?: Partial<Record<string, number>>;
    step_K: number;
  }[];
  covered_pct: number;
  worst_K: number | null;
  rule: {
    lines: { fit: string; words: string; when: RuleCase[] }[];
    covered_pct: number;
    regret_K: number;
    missed: { condition: string; chance_pct: number; fit: string; best: string }[];
  };
  sessions: {
    name: string;
    covered_pct: number;
    bestCovered_pct: number;
    fits: { fit: string; chance_pct: number; start: string; words: string }[];
    beforeStop_pct: number | null;
  }[];
  uncovered: (Done & { condition: string; chance_pct: number; fit: string })[];
  regret: {
    /** The day turned out so. */
    day: string;
    chance_pct: number;
    fitted: (Done & { fit: string; regret_K: number; best: boolean })[];
  }[];
  /** That margins are weighed by [K] */
  doubt: { side: string; hot_K: number; cold_K: number }[];
}

export interface PlanRecord {
  name: string;
  conditions: { name: string; chance_pct: number; ambient_C: number; gap_m: number | null; wet: boolean }[];
  axles: Partial<Record<Axle, AxlePlanRecord>>;
  notices: string[];
}

export function planRecord(name: string, plan: Plan, notices: readonly string[]): PlanRecord {
  return {
    name,
    conditions: plan.conditions.map((each) => ({
      name: each.name,
      chance_pct: percent(each.weight),
      ambient_C: each.ambient_C,
      gap_m: each.gap_m,
      wet: each.isWet,
    })),
    axles: Object.fromEntries(plan.axles.map((axle) => [axle.axle, axleRecord(axle, plan.conditions)])),
    notices: [
      ...notices,
      ...plan.withoutDuct.map((axle) => `${axle}: there is no duct to blank`),
      ...plan.uncut.map(
        ({ axle, least_pct, isShort }) =>
          `${axle}: its blank covers at least ${Math.ceil(least_pct)} %, so no panel covers less${isShort ? ', and the set is smaller than asked' : ''}`,
      ),
    ],
  };
}

function axleRecord(plan: AxlePlan, conditions: readonly LikelyCondition[]): AxlePlanRecord {
  const fitOf = (panel: number): string => plan.panels[panel]!.letter || 'open';
  const at = (condition: number) => ({
    condition: conditions[condition]!.name,
    chance_pct: percent(conditions[condition]!.weight),
  });
  return {
    set: plan.panels.map(({ blanking_pct, sides_pct, step_K }, i) => ({
      letter: fitOf(i),
      blanking_pct,
      ...(sides_pct && { sides_pct }),
      step_K: tenths(step_K),
    })),
    covered_pct: percent(plan.covered),
    worst_K: plan.worst_K,
    rule: {
      lines: plan.rule.lines.map(({ panel, when }) => ({ fit: fitOf(panel), words: ruleWords(when), when })),
      covered_pct: percent(plan.rule.covered),
      regret_K: tenths(plan.rule.regret_K),
      missed: plan.rule.missed.map(({ condition, fitted, best }) => ({
        ...at(condition),
        fit: fitOf(fitted),
        best: fitOf(best),
      })),
    },
    sessions: plan.sessions.map(({ name, covered, bestCovered, fits, beforeStop }) => ({
      name,
      covered_pct: percent(covered),
      bestCovered_pct: percent(bestCovered),
      fits: fits.map((fit) => ({
        fit: fitOf(fit.panel),
        chance_pct: percent(fit.chance),
        start: fitOf(fit.start),
        words: beforeStop === null ? '' : startWords(fit, fitOf),
      })),
      beforeStop_pct: beforeStop === null ? null : percent(beforeStop),
    })),
    uncovered: plan.uncovered.map(({ condition, panel, ...done }) => ({
      ...at(condition),
      fit: fitOf(panel),
      ...doneOf(done),
    })),
    regret: plan.days.map(({ condition, fitted }) => ({
      day: conditions[condition]!.name,
      chance_pct: percent(conditions[condition]!.weight),
      fitted: fitted.map(({ regret_K, isBest, ...done }, panel) => ({
        fit: fitOf(panel),
        ...doneOf(done),
        regret_K: tenths(regret_K),
        best: isBest,
      })),
    })),
    doubt: plan.doubts.map(({ side, hot_K, cold_K }) => ({
      side,
      hot_K: tenths(hot_K),
      cold_K: tenths(cold_K),
    })),
  };
}

const doneOf = (done: Pick<Verdict, 'status' | 'hotMargin_K' | 'coldMargin_K'>): Done => ({
  status: done.status,
  hotMargin_K: bounded(done.hotMargin_K),
  coldMargin_K: bounded(done.coldMargin_K),
  words: doneWords(done),
});

const tenths = (value: number): number => Math.round(10 * value) / 10;
const percent = (share: number): number => Math.round(1e4 * share) / 100;
const bounded = (margin_K: number): number | null => (Number.isFinite(margin_K) ? tenths(margin_K) : null);
