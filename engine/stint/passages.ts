/** The laps and stands of a stint in order: which plan each is driven by, how heavy the car is, and whether the lap counts. */
import type { Scenario } from '../scenario/schema.ts';
import { placeOf } from './braking.ts';
import type { Day } from './day.ts';
import { onBoard, type Tank } from './fuel.ts';
import { lapEnds, type Before } from './lap-ends.ts';
import type { Leg } from './legs.ts';
import { memo } from './memo.ts';
import { motionKey, motionOf, type LapEnds, type MotionRequest } from './motion.ts';
import type { LapKind } from './result.ts';
import { planLap, planStand, type LapPlan } from './steps.ts';

/** One driven lap, or one standing phase. */
export type Passage =
  | {
      kind: LapKind;
      leg: number;
      plan: LapPlan;
      lap: number;
      /** Whether it goes on from a lap like it and into one. */
      flying: boolean;
      counted: boolean[];
      massRatio: number;
      day: Day;
    }
  | { kind: 'stand'; leg: number; plan: ReturnType<typeof planStand>; held: boolean };

export type LapPassage = Exclude<Passage, { kind: 'stand' }>;

/** Laps after a safety car that are reported apart. Common practice, no source. */
const LAPS_AFTER_SAFETY = 3;

/** Plans are cut once for each kind of lap; a stint of the most phases has two a phase. */
const planOf = memo(
  128,
  ({ request, scale }: { request: MotionRequest; scale: number }) => [scale, ...motionKey(request)],
  ({ request, scale }) => {
    const motion = motionOf(request);
    return planLap(motion, scale, (at_m) => placeOf(motion.corners, at_m, at_m));
  },
);

const standOf = memo(
  32,
  (stand: { duration_s: number; held: boolean; scale: number }) => [stand],
  ({ duration_s, held, scale }) => planStand(duration_s, held, scale),
);

interface Way {
  /** The legs that decide speed and heat. */
  legs: Leg[];
  /** The days that the air is taken from, and the tank, one a leg. */
  days: Day[];
  tanks: Tank[];
}

/** Every lap and stand of the legs. */
export function passagesOf(scenario: Scenario, { legs, days, tanks }: Way, scale: number): Passage[] {
  const counts = counter(scenario);
  const passages: Passage[] = [];
  let lap = 0;
  let before: Before | null = null;
  legs.forEach((leg, index) => {
    if (leg.kind === 'stand') {
      const plan = standOf({ duration_s: leg.duration_s, held: leg.brakeHeld, scale });
      passages.push({ kind: leg.kind, leg: index, plan, held: leg.brakeHeld });
      before = { stood: true, end_mps: 0 };
      return;
    }
    const { kind, gap } = leg;
    const massAfter = (laps: number): number => leg.scenario.car.mass_kg + onBoard(tanks[index]!, laps);
    const mass_kg = massAfter(leg.laps / 2);
    const plans = new Map<string, LapPlan>();
    const planFor = (ends: LapEnds): LapPlan => {
      const key = JSON.stringify(ends);
      const plan =
        plans.get(key) ?? planOf({ request: { kind, scenario: leg.scenario, gap, mass_kg, ends }, scale });
      plans.set(key, plan);
      return plan;
    };
    for (let i = 0; i < leg.laps; i++) {
      lap++;
      const ends = lapEnds(legs, { leg: index, lap: i }, before);
      const plan = planFor(ends);
      before = { stood: false, end_mps: plan.endSpeed_mps.at(-1)! };
      passages.push({
        kind,
        leg: index,
        plan,
        lap,
        flying: Object.keys(ends).length === 0,
        counted: counts(kind),
        massRatio: massAfter(i + 0.5) / mass_kg,
        day: days[index]!,
      });
    }
  });
  return passages;
}

/** Tells lap by lap whether it counts, front and rear: from so many push laps on, and not soon after a safety car. */
function counter({ brakes }: Scenario): (kind: LapKind) => boolean[] {
  const from = [brakes.front.window.from_lap, brakes.rear.window.from_lap];
  let push = 0;
  let sinceSafety = Infinity;
  return (kind) => {
    if (kind === 'out') push = 0;
    if (kind === 'push') push++;
    sinceSafety = kind === 'safety' ? 0 : sinceSafety + 1;
    const settled = kind === 'push' && sinceSafety > LAPS_AFTER_SAFETY;
    return from.map((first) => settled && push >= first);
  };
}
