/** How fast a lap begins and ends where it does not simply go on from one like it. */
import { mpsFromKmh } from '../units.ts';
import type { Leg } from './legs.ts';
import type { LapEnds } from './motion.ts';

/** Length of pit lane before the stand, which is at the line. Common practice, no source: 200 to 400 m [m] */
const PIT_LANE_M = 300;

/** What came before a lap: a lap and the speed it ended at, or a stand. */
export interface Before {
  stood: boolean;
  end_mps: number;
}

/**
 * A car leaves a stand at the pit lane's speed and comes to one through the lane, whatever the lap; so do out-laps begin and
 * in-laps end. Else the first lap of a phase begins as fast as the lap before it ended. A measured lap stays as measured.
 */
export function lapEnds(legs: Leg[], at: { leg: number; lap: number }, before: Before | null): LapEnds {
  const leg = legs[at.leg]!;
  if (leg.kind === 'stand' || leg.scenario.trace) return {};
  const pit_mps = mpsFromKmh(leg.scenario.stint.pit_kmh);
  const isLast = at.lap === leg.laps - 1;
  const comesIn = isLast && (leg.kind === 'in' || next(legs, at.leg)?.kind === 'stand');
  return {
    ...(at.lap === 0 ? entry(leg, pit_mps, before) : {}),
    ...(comesIn ? { exit_mps: pit_mps, lane_m: PIT_LANE_M } : {}),
  };
}

function entry({ kind }: Leg, pit_mps: number, before: Before | null): LapEnds {
  if (kind === 'out' || before?.stood) return { entry_mps: pit_mps };
  return before ? { entry_mps: before.end_mps } : {};
}

/** The leg that follows; one without laps is none. */
const next = (legs: Leg[], leg: number): Leg | undefined =>
  legs.find((one, i) => i > leg && (one.kind === 'stand' || one.laps > 0));
