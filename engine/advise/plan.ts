/** The plan of an event: which panels to bring for each axle, when to fit which, and what a wrong choice costs. */
import type { RaceEvent } from '../scenario/event-parse.ts';
import { panelSteps } from '../scenario/panel-steps.ts';
import type { Scenario } from '../scenario/schema.ts';
import type { CompileOptions } from '../stint/compile.ts';
import type { Axle } from '../stint/result.ts';
import { axlePlan, type AxlePlan } from './axle-plan.ts';
import { cuttable } from './cuttable.ts';
import { cellBorders, likelyConditions, type LikelyCondition } from './likely-conditions.ts';
import { marginDoubts } from './margin-doubt.ts';
import { axleTables } from './panel-table.ts';
import type { Search, Steps } from './search.ts';

export type PlanAsked = Pick<RaceEvent, 'sessions' | 'set'>;

export interface Plan {
  /** Between which ambient was cut [°C] */
  borders_C: number[];
  conditions: LikelyCondition[];
  /** Those that have a duct. */
  axles: AxlePlan[];
  /** Whose brakes have none. */
  withoutDuct: Axle[];
  /** Whose blank cannot be cut for every step: the least that it covers, and whether so the set has fewer panels than wanted. */
  uncut: { axle: Axle; least_pct: number; isShort: boolean }[];
}

/** Of a scenario whose phases leave weather, traffic and blanking to the sessions (`planGround`). */
export const planFor = (
  scenario: Scenario,
  asked: PlanAsked,
  options: CompileOptions = {},
): Search<Plan> => ({ ground: { scenario, ...options }, steps: planning(scenario, asked) });

function* planning(scenario: Scenario, { sessions, set }: PlanAsked): Steps<Plan> {
  const conditions = likelyConditions(sessions);
  const candidates = [0, ...panelSteps(set)];
  const doubts = yield* marginDoubts(scenario);
  const tables = yield* axleTables(scenario, { conditions, candidates, doubts });
  const borders_C = cellBorders(sessions);
  const cut = tables.map((all) => cuttable(scenario, all, candidates));
  const axles = cut.map((each) =>
    axlePlan(each.tables, { candidates: each.candidates, conditions, borders_C, sessions, set }),
  );
  const uncut = cut
    .filter((each) => each.candidates.length < candidates.length)
    .map(({ tables: { axle }, candidates: { length }, least_pct }) => {
      return { axle, least_pct, isShort: length - 1 < set.panels };
    });
  const withoutDuct = (['front', 'rear'] as const).filter((axle) => !tables.some((t) => t.axle === axle));
  return { borders_C, conditions, axles, withoutDuct, uncut };
}
