/** How fast a lap begins and ends where it does not simply go on from one like it. */
import { mpsFromKmh } from '../units.ts';
import type { Leg } from './legs.ts';
import type { LapEnds } from './motion.ts';

/** An out-lap starts in the pit lane and an in-lap ends there. A measured lap is left as it was measured. */
export function lapEnds(legs: Leg[], at: { leg: number; lap: number }): LapEnds {
  const leg = legs[at.leg]!;
  if (leg.kind === 'stand' || leg.scenario.trace) return {};
  const pit_mps = mpsFromKmh(leg.scenario.stint.pit_kmh);
  return {
    ...(leg.kind === 'out' ? { entry_mps: pit_mps } : {}),
    ...(leg.kind === 'in' ? { exit_mps: pit_mps } : {}),
  };
}
