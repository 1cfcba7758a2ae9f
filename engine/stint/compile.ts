/** From a checked scenario to the model of its stint: SI numbers, every lap cut into steps, every conductance in a map. */
import type { ConductanceMap } from '../disc/conductance-map.ts';

import { withChanges } from '../scenario/override.ts';
import type { Scenario } from '../scenario/schema.ts';
import { kelvin } from '../units.ts';
import { placeOf } from './braking.ts';
import { cornerAir } from './corner-air.ts';
import { blankingKeys, cornersOf, specOf, type Corner } from './corners.ts';
import type { CornerSpec } from '../disc/corner-spec.ts';
import { dayOf, type Day } from './day.ts';
import { onBoard, tanksOf, type Tank } from './fuel.ts';
import { legsOf, type Leg } from './legs.ts';
import { memo } from './memo.ts';
import { lapLength, motionKey, motionOf, type MotionRequest } from './motion.ts';
import { notesOf, type PhaseNote } from './phase-facts.ts';
import type { LapKind } from './result.ts';
import { planLap, planStand, type LapPlan } from './steps.ts';

/** One driven lap, or one standing phase. */
export type Passage =
  | {
      kind: LapKind;
      leg: number;
      plan: LapPlan;
      lap: number;
      counted: boolean[];
      massRatio: number;
      day: Day;
    }
  | { kind: 'stand'; leg: number; plan: ReturnType<typeof planStand>; held: boolean };

export interface CornerModel {
  corner: Corner;
  spec: CornerSpec;
  start: { disc_K: number; pad_K: number; caliper_K: number };
  emissivity: number;
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

/** Plans are cut once for each kind of lap. */
const planOf = memo(
  24,
  ({ request, scale }: { request: MotionRequest; scale: number }) => [scale, ...motionKey(request)],
  ({ request, scale }) => {
    const motion = motionOf(request);
    return planLap(motion, scale, (at_m) => placeOf(motion.corners, at_m, at_m));
  },
);

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

function passagesOf(
  scenario: Scenario,
  { legs, days, tanks }: { legs: Leg[]; days: Day[]; tanks: Tank[] },
  scale: number,
): Passage[] {
  const from = [scenario.brakes.front.window.from_lap, scenario.brakes.rear.window.from_lap];
  const passages: Passage[] = [];
  let lap = 0;
  let push = 0;
  let sinceSafety = Infinity;
  legs.forEach((leg, index) => {
    if (leg.kind === 'stand') {
      passages.push({
        kind: 'stand',
        leg: index,
        plan: planStand(leg.duration_s, leg.brakeHeld, scale),
        held: leg.brakeHeld,
      });
      return;
    }
    const massAfter = (laps: number): number => leg.scenario.car.mass_kg + onBoard(tanks[index]!, laps);
    const mass_kg = massAfter(leg.laps / 2);
    const plan =
      leg.laps > 0
        ? planOf({ request: { kind: leg.kind, scenario: leg.scenario, gap: leg.gap, mass_kg }, scale })
        : null;
    for (let i = 0; i < leg.laps && plan; i++) {
      lap++;
      if (leg.kind === 'out') push = 0;
      if (leg.kind === 'push') push++;
      sinceSafety = leg.kind === 'safety' ? 0 : sinceSafety + 1;
      const settled = leg.kind === 'push' && sinceSafety > LAPS_AFTER_SAFETY;
      const counted = from.map((first) => settled && push >= first);
      passages.push({
        kind: leg.kind,
        leg: index,
        plan,
        lap,
        counted,
        massRatio: massAfter(i + 0.5) / mass_kg,
        day: days[index]!,
      });
    }
  });
  return passages;
}

/** The legs whose speed and heat are kept: as the unchanged stint has them, unless its laps are cut another way. */
function legsHeld(driven: Scenario, { stint }: Scenario, legs: Leg[]): Leg[] {
  const own = legsOf(driven);
  const isAlike = own.length === legs.length && own.every((leg, i) => lengthOf(leg) === lengthOf(legs[i]!));
  return isAlike ? own : legsOf({ ...driven, stint });
}

const lengthOf = (leg: Leg): string =>
  leg.kind === 'stand' ? `${leg.duration_s} s ${leg.brakeHeld}` : `${leg.kind} ${leg.laps}`;

/** Laps after a safety car that are reported apart. Common practice, no source. */
const LAPS_AFTER_SAFETY = 3;

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
    spec: specOf(corner.brake, scenario.car.loaded_radius_m),
    start: {
      disc_K: kelvinOr(initial.disc_C),
      pad_K: kelvinOr(initial.pad_C),
      caliper_K: kelvinOr(initial.caliper_C),
    },
    emissivity: scenario.correction.emissivity.factor,
    maps: mapsOf(corner, legs),
    shares: drivenLegs.map((leg) => {
      const front = leg.scenario.car.brake_balance_front;
      return ((corner.axle === 'front' ? front : 1 - front) / 2) * scenario.correction.heat.factor;
    }),
  };
}
