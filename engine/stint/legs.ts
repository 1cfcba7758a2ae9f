/** The phases of a stint laid out one after another, each with the scenario that holds in it. */
import { withChanges } from '../scenario/override.ts';
import type { Phase, Scenario } from '../scenario/schema.ts';
import type { LapKind } from './result.ts';

/** Nose-to-tail distance, or time at the same place, to the car ahead; neither in clear air. */
export interface Gap {
  gap_m: number | null;
  gap_s: number | null;
  /** Share of the lap behind the car ahead [-] */
  share: number;
}

export type Leg =
  | { kind: LapKind; laps: number; scenario: Scenario; gap: Gap }
  | { kind: 'stand'; duration_s: number; brakeHeld: boolean; scenario: Scenario; gap: Gap };

/** One leg a phase. What a phase sets holds from there on; its gap is its own. */
export function legsOf(scenario: Scenario): Leg[] {
  const { phases, laps } = scenario.stint;
  const fixed = phases.reduce((sum, phase) => sum + (phase.kind === 'stand' ? 0 : (phase.laps ?? 0)), 0);
  let now = scenario;
  return phases.map((phase) => {
    now = withChanges(now, phase.set ?? {});
    if (phase.kind === 'stand') {
      const { kind, duration_s, brake_held } = phase;
      return {
        kind,
        duration_s,
        brakeHeld: brake_held,
        scenario: now,
        gap: { gap_m: null, gap_s: null, share: 0 },
      };
    }
    return { kind: phase.kind, laps: phase.laps ?? laps - fixed, scenario: now, gap: gapOf(phase, now) };
  });
}

function gapOf(phase: Exclude<Phase, { kind: 'stand' }>, { traffic }: Scenario): Gap {
  const named = phase.gap_m !== undefined || phase.gap_s !== undefined;
  const { gap_m = null, gap_s = null } = named ? phase : traffic;
  return { gap_m, gap_s, share: gap_m === null && gap_s === null ? 0 : (phase.traffic_share ?? 1) };
}

/** Distance to the car ahead at a speed; Infinity in clear air [m]. */
export const gapAt = (gap: Gap, speed_mps: number): number =>
  gap.gap_m ?? (gap.gap_s === null ? Infinity : Math.max(gap.gap_s * speed_mps, 1));
