/** What it costs to have fitted the wrong one: fitted X, the day turned out Y. */
import type { LikelyCondition } from './likely-conditions.ts';
import type { Cost } from './fitting-rule.ts';
import { millionths } from './panel-set.ts';
import type { Fitted } from './panel-table.ts';

export interface Regret extends Pick<Fitted, 'status' | 'hotMargin_K' | 'coldMargin_K'> {
  /** Weighed margin given away against the best of the set [K] */
  regret_K: number;
  isBest: boolean;
}

/** Nothing is worth telling apart beyond it; a side that no limit bounds has a margin without end [K] */
const MOST_K = 1000;

const worth = ({ weighed_K }: Fitted): number => Math.min(MOST_K, Math.max(-MOST_K, weighed_K));

/** The one to fit: of those that stay in, or of all where none does, the one with the most to spare; of equals the most open. */
export function bestFit(row: readonly Fitted[]): number {
  const isAnyIn = row.some(({ status }) => status === 'in');
  const values = row.map((fitted) => (isAnyIn && fitted.status !== 'in' ? -Infinity : worth(fitted)));
  return values.indexOf(Math.max(...values));
}

/** Of every panel of a set, an open mouth first, under one condition. */
export function regretsOf(row: readonly Fitted[]): Regret[] {
  const best = bestFit(row);
  return row.map((fitted, i) => ({
    status: fitted.status,
    hotMargin_K: fitted.hotMargin_K,
    coldMargin_K: fitted.coldMargin_K,
    regret_K: Math.max(0, worth(row[best]!) - worth(fitted)),
    isBest: i === best,
  }));
}

/** The same in whole numbers, to be added up over conditions. */
export function costsOf(row: readonly Fitted[], weight: number): Cost[] {
  const isAnyIn = row.some(({ status }) => status === 'in');
  return regretsOf(row).map(({ status, regret_K }) => ({
    lost: isAnyIn && status !== 'in' ? millionths(weight) : 0,
    regret: millionths(weight) * Math.round(10 * regret_K),
  }));
}

/** Of the ambients that may come: a cold, a likely and a hot day [-] */
const DAYS = [0.1, 0.5, 0.9];

/** Places of the conditions that stand for days: cold, likely and hot in clear air and in traffic, dry and wet. */
export function daysOf(conditions: readonly LikelyCondition[]): number[] {
  const states = [...new Set(conditions.map(stateOf))];
  return states.flatMap((state) => {
    const places = conditions.flatMap((each, i) => (stateOf(each) === state ? [i] : []));
    const total = places.reduce((sum, i) => sum + conditions[i]!.weight, 0);
    const days = DAYS.map((share) => {
      let sum = 0;
      return places.find((i) => (sum += conditions[i]!.weight) >= share * total) ?? places.at(-1)!;
    });
    return [...new Set(days)];
  });
}

const stateOf = ({ gap_m, isWet }: LikelyCondition): string => `${gap_m} ${isWet}`;
