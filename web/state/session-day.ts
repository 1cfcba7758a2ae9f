/** The likeliest day of a session, and what the stint is changed by to drive it with what the rule fits then. Pure. */
import type { Axle, AxlePlan, Changes, LikelyCondition, Plan, Scenario } from '../../engine/index.ts';
import { isSplit, SIDES } from './sides.ts';

export interface LikelyDay {
  condition: LikelyCondition;
  /** What is fitted: places in the set, by axle. */
  panels: Partial<Record<Axle, number>>;
}

/** The condition that is the most probable in a session; null where none is. */
export function likelyDay({ conditions, axles }: Plan, session: number): LikelyDay | null {
  const chance = (each: LikelyCondition): number => each.inSession[session] ?? 0;
  const condition = conditions.reduce<LikelyCondition | null>(
    (best, each) => (chance(each) > (best ? chance(best) : 0) ? each : best),
    null,
  );
  if (!condition) return null;
  return {
    condition,
    panels: Object.fromEntries(axles.map((plan) => [plan.axle, fittedBy(plan, condition)])),
  };
}

/** What the lines of the rule say under a condition: the first that has a case which holds. */
function fittedBy({ rule }: Pick<AxlePlan, 'rule'>, at: LikelyCondition): number {
  const found = rule.lines.find(({ when }) =>
    when.some(
      ({ above_C, below_C, isFollowing, isWet }) =>
        (above_C === null || at.from_C >= above_C) &&
        (below_C === null || at.to_C <= below_C) &&
        (isFollowing === null || isFollowing === (at.gap_m !== null)) &&
        (isWet === null || isWet === at.isWet),
    ),
  );
  return found?.panel ?? 0;
}

export function sessionChanges(
  scenario: Scenario,
  { axles }: Plan,
  { condition, panels }: LikelyDay,
): Changes {
  const fitted = axles.flatMap(({ axle, panels: set }): (readonly [string, number])[] => {
    const panel = set[panels[axle] ?? 0];
    if (!panel) return [];
    if (!isSplit(scenario, axle)) return [[`blanking_pct.${axle}`, panel.blanking_pct]];
    return SIDES.map((side) => {
      const own = panel.sides_pct?.[side] ?? panel.blanking_pct;
      return [`blanking_pct.${axle}_${side}`, own];
    });
  });
  return { ...condition.changes, ...Object.fromEntries(fitted) };
}
