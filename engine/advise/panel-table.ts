/** How every candidate of an axle's panels does under every likely condition: an open mouth first, then each step. */
import type { Scenario } from '../scenario/schema.ts';
import type { Axle, CornerResult, Verdict } from '../stint/result.ts';
import type { LikelyCondition } from './likely-conditions.ts';
import { looksAt } from './look.ts';
import { weighed_K, type MarginDoubt } from './margin-doubt.ts';
import type { At, Outcome, Steps } from './search.ts';

/** One candidate under one condition. */
export interface Fitted extends Pick<Verdict, 'status' | 'hotMargin_K' | 'coldMargin_K'> {
  /** The smaller margin, weighed by the doubt of its side [K] */
  weighed_K: number;
  /** Highest face peak of the counted laps [K] */
  hottest_K: number;
}

export type Side = CornerResult['side'];

/** What a candidate covers on each side of its axle, which is one where they are equal [%] */
export type Covering = Partial<Record<Side, number>>;

export interface CornerTable {
  side: Side;
  doubt: MarginDoubt;
  /** By condition, then by candidate. */
  rows: Fitted[][];
}

export interface AxleTables {
  axle: Axle;
  sides: CornerTable[];
}

/** Every corner that has a duct; a run a condition, in which all candidates are looked at, all runs at once. */
export function* axleTables(
  scenario: Scenario,
  { conditions, candidates, doubts }: Asked,
): Steps<AxleTables[]> {
  const corners = looksAt(scenario).filter(({ corner }) => corner.brake.duct !== null);
  const at = corners.flatMap(({ corner: { axle, side } }) =>
    candidates.map((blanking_pct): At => ({ axle, side, blanking_pct })),
  );
  const answers = yield conditions.map(({ changes }) => ({ changes, at }));
  const outcomeOf = (condition: number, corner: number, candidate: number): Outcome =>
    answers[condition]![corner * candidates.length + candidate]!;
  const tables = corners.map(({ corner: { axle, side } }, at) => {
    const doubt = doubts.find((each) => each.axle === axle && each.side === side);
    if (!doubt) throw new Error(`no corner: ${axle} ${side}`);
    const rows = conditions.map((_, c) => candidates.map((__, i) => fittedOf(outcomeOf(c, at, i), doubt)));
    return { axle, table: { side, doubt, rows } };
  });
  return (['front', 'rear'] as const).flatMap((axle) => {
    const sides = tables.filter((each) => each.axle === axle).map(({ table }) => table);
    return sides.length === 0 ? [] : [{ axle, sides }];
  });
}

interface Asked {
  conditions: readonly LikelyCondition[];
  /** Covered shares of the mouth [%] */
  candidates: readonly number[];
  doubts: readonly MarginDoubt[];
}

const fittedOf = ({ verdict }: Outcome, doubt: MarginDoubt): Fitted => ({
  status: verdict.status,
  hotMargin_K: verdict.hotMargin_K,
  coldMargin_K: verdict.coldMargin_K,
  weighed_K: weighed_K(verdict, doubt),
  hottest_K: verdict.facePeak_K,
});
