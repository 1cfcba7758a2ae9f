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
  const axles = tables.map((all) => {
    const cut = cuttable(scenario, all, candidates);
    const known = { candidates: cut.candidates, conditions, borders_C, sessions, set };
    return axlePlan(cut.tables, known);
  });
  const withoutDuct = (['front', 'rear'] as const).filter((axle) => !tables.some((t) => t.axle === axle));
  return { borders_C, conditions, axles, withoutDuct };
}
