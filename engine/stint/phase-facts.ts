/** What holds in each phase of a stint, and what of it is new. */
import { mpsFromKmh } from '../units.ts';
import type { Scenario } from '../scenario/schema.ts';
import { dayOf } from './day.ts';
import { onBoard, type Tank } from './fuel.ts';
import type { Gap, Leg } from './legs.ts';
import type { PhaseFacts } from './result.ts';

/** The part of a phase's span in the result that needs no clock. */
export interface PhaseNote extends PhaseFacts {
  changed: (keyof PhaseFacts)[];
}

/** One note a leg, each compared with the leg before; the first with the scenario as the stint finds it. */
export function notesOf(scenario: Scenario, legs: Leg[], tanks: Tank[]): PhaseNote[] {
  let before = factsOf(scenario, gapFact({ ...noShare, ...scenario.traffic }), legs[0]!.scenario.car.fuel_kg);
  return legs.map((leg, i) => {
    const driven = leg.kind !== 'stand';
    const facts = factsOf(leg.scenario, driven ? gapFact(leg.gap) : null, onBoard(tanks[i]!, 0));
    const compared = driven ? facts : { ...facts, gap: before.gap };
    const changed = keysOf(facts).filter((key) =>
      key === 'fuel_kg' ? leg.refuelled : !same(compared[key], before[key]),
    );
    // a phase that takes what the stint leaves may be left nothing
    if (!driven || leg.laps > 0) before = compared;
    return { ...facts, changed };
  });
}

const noShare = { share: 1, pullOut_kmh: null, tow: true };

function factsOf(
  { conditions, blanking_pct, car, driver }: Scenario,
  gap: PhaseFacts['gap'],
  fuel_kg: number,
) {
  const { wet, ambient_K } = dayOf(conditions);
  const facts: PhaseFacts = {
    gap,
    wet,
    ambient_K,
    blanking_pct,
    fuel_kg,
    balance: car.brake_balance_front,
    driver,
  };
  return facts;
}

function gapFact({ gap_m, gap_s, share, pullOut_kmh, tow }: Gap): PhaseFacts['gap'] {
  if (share === 0 || (gap_m === null && gap_s === null)) return null;
  return { gap_m, gap_s, share, pullOut_mps: pullOut_kmh === null ? null : mpsFromKmh(pullOut_kmh), tow };
}

const keysOf = (facts: PhaseFacts): (keyof PhaseFacts)[] => Object.keys(facts) as (keyof PhaseFacts)[];
const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
