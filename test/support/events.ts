/** Events that take few runs. */
import type { PlanAsked } from '../../engine/advise/plan.ts';
import type { Session } from '../../engine/scenario/event-schema.ts';

export const sessionOf = (over: Partial<Session> = {}): Session => ({
  name: 'one',
  ambient_C: { low: 10, likely: 20, high: 30 },
  traffic_pct: { low: 0, likely: 0, high: 0 },
  gap_m: 20,
  wet_pct: 0,
  stops: false,
  ...over,
});

/** Two cells of ambient, clear air and traffic. */
export const smallEvent: PlanAsked = {
  sessions: [
    sessionOf({
      ambient_C: { low: 20, likely: 21, high: 22 },
      traffic_pct: { low: 10, likely: 20, high: 60 },
      stops: true,
    }),
  ],
  set: { panels: 2, least_pct: 40, most_pct: 80 },
};
