/** The stint that an event is planned with: the sessions say weather and traffic, and the plan says what is fitted. */
import type { Phase, Scenario } from './schema.ts';

export interface PlanGround {
  scenario: Scenario;
  /** What the phases said of these, which was left out: dotted keys. */
  left: string[];
}

/** What a phase may set that is for the sessions or the plan to say. */
const IS_SAID = /^(conditions\.(ambient_C|wet)$|blanking_pct\.)/;
const GAPS = ['gap_m', 'gap_s'] as const;

/** Without weather, traffic and blanking of its phases' own. Pace, fuel, stops and share of the lap in traffic stay. */
export function planGround(scenario: Scenario): PlanGround {
  const left: string[] = [];
  const phases = scenario.stint.phases.map((phase, i) => {
    const keys = keysSaid(phase);
    left.push(...keys.map((key) => `stint.phases.${i}.${key}`));
    return keys.length === 0 ? phase : without(phase);
  });
  if (left.length === 0) return { scenario, left };
  return { scenario: { ...scenario, stint: { ...scenario.stint, phases } }, left };
}

function keysSaid(phase: Phase): string[] {
  const gaps = GAPS.filter((key) => key in phase);
  const set = Object.keys(phase.set ?? {}).filter((key) => IS_SAID.test(key));
  return [...gaps, ...set.map((key) => `set.${key}`)];
}

function without({ set, ...phase }: Phase): Phase {
  const own = Object.entries(phase).filter(([key]) => !GAPS.some((gap) => gap === key));
  const kept = Object.entries(set ?? {}).filter(([key]) => !IS_SAID.test(key));
  return {
    ...Object.fromEntries(own),
    ...(kept.length > 0 && { set: Object.fromEntries(kept) }),
  } as Phase;
}
