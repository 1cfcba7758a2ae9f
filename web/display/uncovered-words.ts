/** What stays out of the window, in few lines: neighbours in ambient that fare alike are told as one. Pure. */
import type { LikelyCondition, Missed, PlannedPanel, Uncovered } from '../../engine/index.ts';
import { capital, kelvins } from './format.ts';
import { conditionWords, days, fitName } from './plan-words.ts';

interface Run<T> {
  /** From the coldest to the hottest. */
  all: [T, ...T[]];
  last: T;
  condition: LikelyCondition;
}

/** Runs of conditions that differ in ambient alone and touch, and are alike in what matters. */
function runsOf<T extends { condition: number }>(
  list: readonly T[],
  conditions: readonly LikelyCondition[],
  alike: (a: T, b: T) => boolean,
): Run<T>[] {
  const runs: Run<T>[] = [];
  const known = list.flatMap((each) => {
    const condition = conditions[each.condition];
    return condition ? [{ each, condition }] : [];
  });
  for (const { each, condition } of known.sort((a, b) => a.condition.from_C - b.condition.from_C)) {
    const goesOn = runs.find(
      (run) =>
        run.condition.gap_m === condition.gap_m &&
        run.condition.isWet === condition.isWet &&
        run.condition.to_C === condition.from_C &&
        alike(run.last, each),
    );
    if (!goesOn) {
      runs.push({ all: [each], last: each, condition });
      continue;
    }
    goesOn.all.push(each);
    goesOn.last = each;
    const weight = goesOn.condition.weight + condition.weight;
    goesOn.condition = { ...goesOn.condition, to_C: condition.to_C, weight };
  }
  return runs.sort((a, b) => b.condition.weight - a.condition.weight);
}

const headOf = (condition: LikelyCondition): string =>
  `${capital(conditionWords(condition))} (${days(condition.weight)})`;

/** The likeliest first. */
export const uncoveredLines = (
  uncovered: readonly Uncovered[],
  conditions: readonly LikelyCondition[],
  panels: readonly PlannedPanel[],
): string[] =>
  runsOf(uncovered, conditions, (a, b) => a.panel === b.panel && a.status === b.status).map(
    ({ all, condition }) =>
      `${headOf(condition)}: the least bad is ${fitName(panels, all[0].panel)}, ${outWords(all)}.`,
  );

/** "52 to 108 K too cold" */
function outWords(all: readonly [Uncovered, ...Uncovered[]]): string {
  const by = (margin: (one: Uncovered) => number, words: string): string => {
    const sizes = all.map((one) => Math.max(0, -margin(one)));
    const [least, most] = [kelvins(Math.min(...sizes)), kelvins(Math.max(...sizes))];
    return `${least === most ? least : `${least.split(/\u00a0/)[0]} to ${most}`} ${words}`;
  };
  const status = all[0].status;
  if (status === 'not judged') return 'not judged';
  const hot = by(({ hotMargin_K }) => hotMargin_K, 'too hot');
  const cold = by(({ coldMargin_K }) => coldMargin_K, 'too cold');
  return status === 'both' ? `${hot} and ${cold}` : status === 'hot' ? hot : cold;
}

/** What the rule gets wrong for the sake of few lines, the likeliest first. */
export const missedLines = (
  missed: readonly Missed[],
  conditions: readonly LikelyCondition[],
  panels: readonly PlannedPanel[],
): string[] =>
  runsOf(missed, conditions, (a, b) => a.fitted === b.fitted && a.best === b.best).map(
    ({ all, condition }) =>
      `${headOf(condition)}: it says ${fitName(panels, all[0].fitted)}, ${fitName(panels, all[0].best)} would stay in.`,
  );
