/** The phases of a stint laid out one after another, each with the scenario that holds in it. */
import { withChanges } from '../scenario/changes.ts';
import { withSides } from '../scenario/phase-set.ts';
import type { Phase, Scenario } from '../scenario/schema.ts';
import type { LapKind } from './result.ts';

/** Nose-to-tail distance, or time at the same place, to the car ahead; neither in clear air. */
export interface Gap {
  gap_m: number | null;
  gap_s: number | null;
  /** Share of the lap behind the car ahead [-] */
  share: number;
  /** Faster than this the car runs beside the wake; null stays in line. */
  pullOut_kmh: number | null;
  /** Whether the car ahead spares this one drag. */
  tow: boolean;
}

export const clearAir: Gap = { gap_m: null, gap_s: null, share: 0, pullOut_kmh: null, tow: false };

interface Setting {
  scenario: Scenario;
  gap: Gap;
  /** Whether the phase says what fuel is on board as it begins. */
  refuelled: boolean;
}

export type Leg = Setting &
  ({ kind: LapKind; laps: number } | { kind: 'stand'; duration_s: number; brakeHeld: boolean });

/** One leg a phase. What a phase sets holds from there on; its gap is its own. */
export function legsOf(scenario: Scenario): Leg[] {
  const { phases, laps } = scenario.stint;
  const fixed = phases.reduce((sum, phase) => sum + (phase.kind === 'stand' ? 0 : (phase.laps ?? 0)), 0);
  let now = scenario;
  return phases.map((phase) => {
    const { set = {} } = phase;
    now = withChanges(now, withSides(now, set));
    const setting = { scenario: now, refuelled: 'car.fuel_kg' in set };
    if (phase.kind === 'stand') {
      const { kind, duration_s, brake_held } = phase;
      return { ...setting, kind, duration_s, brakeHeld: brake_held, gap: clearAir };
    }
    return { ...setting, kind: phase.kind, laps: phase.laps ?? laps - fixed, gap: gapOf(phase, now) };
  });
}

function gapOf(phase: Exclude<Phase, { kind: 'stand' }>, { traffic }: Scenario): Gap {
  const named = phase.gap_m !== undefined || phase.gap_s !== undefined;
  const { gap_m = null, gap_s = null } = named ? phase : traffic;
  const { traffic_share: share = 1, pull_out_kmh = null, tow = true } = phase;
  if (share === 0 || (gap_m === null && gap_s === null)) return clearAir;
  return { gap_m, gap_s, share, pullOut_kmh: pull_out_kmh, tow };
}

/** Distance to the car ahead at a speed; Infinity in clear air [m]. */
export const gapAt = (gap: Gap, speed_mps: number): number =>
  gap.gap_m ?? (gap.gap_s === null ? Infinity : Math.max(gap.gap_s * speed_mps, 1));
