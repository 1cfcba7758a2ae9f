/** From a checked scenario to the model of its stint: SI numbers, every lap cut into steps, every conductance in a map. */
import type { ConductanceMap } from '../disc/conductance-map.ts';

import { withChanges } from '../scenario/changes.ts';
import type { Scenario } from '../scenario/schema.ts';
import { kelvin } from '../units.ts';
import { cornerAir } from './corner-air.ts';
import { blankingKeys, cornersOf, specOf, type Corner } from './corners.ts';
import type { CornerSpec } from '../disc/corner-spec.ts';
import { withEmissivity } from '../disc/emissivity.ts';
import { dayOf } from './day.ts';
import { tanksOf } from './fuel.ts';
import { legsOf, type Leg } from './legs.ts';
import { lapLength } from './motion.ts';
import { passagesOf, type Passage } from './passages.ts';
import { notesOf, type PhaseNote } from './phase-facts.ts';

export interface CornerModel {
  corner: Corner;
  spec: CornerSpec;
  start: { disc_K: number; pad_K: number; caliper_K: number };
  /** One map a leg. */
  maps: ConductanceMap[];
  /** This corner's share of all four brakes' heat, one a leg. */
  shares: number[];
}

export interface StintModel {
  scenario: Scenario;
  passages: Passage[];
  corners: CornerModel[];
  /** What holds in each phase, one a leg. */
  notes: PhaseNote[];
  /** Samples of a column: one a step, and the start. */
  samples: number;
}

export interface CompileOptions {
  /** The scenario whose speed and heat are kept when `stint.hold_trace` is true. */
  driven?: Scenario | null;
  /** All steps shorter (below 1) or longer, to see the error they make. */
  stepScale?: number;
}

/** Compiles a scenario that parseScenario has checked. */
export function compile(scenario: Scenario, { driven, stepScale = 1 }: CompileOptions = {}): StintModel {
  const legs = legsOf(scenario);
  const drivenLegs = driven && scenario.stint.hold_trace ? legsHeld(driven, scenario, legs) : legs;
  const days = legs.map((leg) => dayOf(leg.scenario.conditions));
  const tanks = tanksOf(drivenLegs, lapLength(drivenLegs[0]!.scenario));
  const passages = passagesOf(scenario, { legs: drivenLegs, days, tanks }, stepScale);
  const through = legs.map((leg) => leg.scenario);
  const corners = cornersOf(scenario, through).map((corner) =>
    cornerModel(scenario, corner, { legs, drivenLegs }),
  );
  const notes = notesOf(scenario, legs, tanks);
  return { scenario, passages, corners, notes, samples: passages.reduce((sum, p) => sum + p.plan.steps, 1) };
}

/** The legs whose speed and heat are kept: as the unchanged stint has them, unless its laps are cut another way. */
function legsHeld(driven: Scenario, { stint }: Scenario, legs: Leg[]): Leg[] {
  const own = legsOf(driven);
  const isAlike = own.length === legs.length && own.every((leg, i) => lengthOf(leg) === lengthOf(legs[i]!));
  return isAlike ? own : legsOf({ ...driven, stint });
}

const lengthOf = (leg: Leg): string =>
  leg.kind === 'stand' ? `${leg.duration_s} s ${leg.brakeHeld}` : `${leg.kind} ${leg.laps}`;

/** The same corner under another blanking from the start of the stint; what phases set holds as before. */
export function withBlanking(
  { scenario }: StintModel,
  model: CornerModel,
  blanking_pct: number,
): CornerModel {
  const keys = blankingKeys(scenario, model.corner);
  const legs = legsOf(withChanges(scenario, Object.fromEntries(keys.map((key) => [key, blanking_pct]))));
  return { ...model, maps: mapsOf(model.corner, legs) };
}

const mapsOf = (corner: Corner, legs: Leg[]): ConductanceMap[] =>
  legs.map(({ scenario, gap }) => cornerAir({ corner, scenario, gap }));

function cornerModel(
  scenario: Scenario,
  corner: Corner,
  { legs, drivenLegs }: { legs: Leg[]; drivenLegs: Leg[] },
): CornerModel {
  const initial = scenario.initial[corner.axle];
  const kelvinOr = (celsius: number | null): number => kelvin(celsius ?? scenario.conditions.ambient_C);
  return {
    corner,
    spec: withEmissivity(
      specOf(corner.brake, scenario.car.loaded_radius_m),
      scenario.correction.emissivity.factor,
    ),
    start: {
      disc_K: kelvinOr(initial.disc_C),
      pad_K: kelvinOr(initial.pad_C),
      caliper_K: kelvinOr(initial.caliper_C),
    },
    maps: mapsOf(corner, legs),
    shares: drivenLegs.map((leg) => {
      const front = leg.scenario.car.brake_balance_front;
      return ((corner.axle === 'front' ? front : 1 - front) / 2) * scenario.correction.heat.factor;
    }),
  };
}
