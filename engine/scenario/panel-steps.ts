import type { SetWanted } from './event-schema.ts';

/** Panels are thought of in these steps; finer ones nobody can tell apart. Common practice, no source [%] */
export const PANEL_STEP_PCT = 5;

/** What a panel may cover: every step from the least to the most [%] */
export function panelSteps({ least_pct, most_pct }: Pick<SetWanted, 'least_pct' | 'most_pct'>): number[] {
  const first = Math.ceil(least_pct / PANEL_STEP_PCT);
  const last = Math.floor(most_pct / PANEL_STEP_PCT);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => PANEL_STEP_PCT * (first + i));
}
