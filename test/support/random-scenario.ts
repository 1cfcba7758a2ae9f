/** Arbitrary valid scenarios: any car, brake, weather, traffic and phases, on a short measured lap. */
import fc from 'fast-check';
import { defaultScenario } from '../../engine/scenario/library.ts';
import { parseScenario } from '../../engine/scenario/parse.ts';
import { problemLine } from '../../engine/scenario/problem.ts';
import type { Brake, Scenario } from '../../engine/scenario/schema.ts';
import { anyBrake } from './random-brake.ts';
import { between, clamped, numbersOf, orNone, partOf, seldom, within } from './random-number.ts';
import { shortLaps } from './short-laps.ts';

const sample = defaultScenario();
const sides = ['front_left', 'front_right', 'rear_left', 'rear_right'] as const;

/** Mass of a car over that of its four rings: from one with huge brakes to one that cooks them [-] */
const CAR_PER_RING = [12, 60] as const;

const conditions = partOf('conditions', sample.conditions, { wet: fc.boolean() });

/** None, in metres or in seconds. */
const gap = fc.oneof(
  fc.constant({ gap_m: null, gap_s: null }),
  within('traffic.gap_m').map((gap_m) => ({ gap_m, gap_s: null })),
  within('traffic.gap_s').map((gap_s) => ({ gap_m: null, gap_s })),
);

const traffic = fc
  .record({ gap, rest: fc.record(numbersOf('traffic', sample.traffic)) })
  .map((drawn) => ({ ...drawn.rest, ...drawn.gap }));

/** What a phase may change. */
const set = fc.record(
  {
    'conditions.ambient_C': within('conditions.ambient_C'),
    'conditions.wet': fc.boolean(),
    'conditions.humidity_pct': within('conditions.humidity_pct'),
    'blanking_pct.front': within('blanking_pct.front'),
    'blanking_pct.rear': within('blanking_pct.rear'),
    'car.brake_balance_front': within('car.brake_balance_front'),
    'car.fuel_kg': within('car.fuel_kg'),
  },
  { requiredKeys: [] },
);

const lapPhase = fc.record({
  kind: fc.constantFrom('push', 'out', 'safety', 'in'),
  laps: fc.integer({ min: 1, max: 2 }),
});

/** Two phases in three are driven in the day and the gap of the stint: each other costs a map for each corner. */
const inOtherAir = fc
  .record({
    phase: lapPhase,
    gap,
    traffic: fc.record(
      {
        traffic_share: between(0, 1),
        pull_out_kmh: orNone(within('stint.phases.0.pull_out_kmh')),
        tow: fc.boolean(),
        set,
      },
      { requiredKeys: [] },
    ),
  })
  .map(({ phase, gap: own, traffic: rest }) => ({ ...phase, ...own, ...rest }));

const standPhase = fc.record(
  {
    kind: fc.constant('stand'),
    duration_s: fc.integer({ min: 1, max: 600 }),
    brake_held: fc.boolean(),
    set,
  },
  { requiredKeys: ['kind', 'duration_s', 'brake_held'] },
);

/** One to three phases of laps, with a stand among them or none. */
const stint = fc
  .record({
    laps: fc.array(fc.oneof({ arbitrary: lapPhase, weight: 2 }, { arbitrary: inOtherAir, weight: 1 }), {
      minLength: 1,
      maxLength: 3,
    }),
    stand: orNone(standPhase),
    at: fc.nat(3),
    rest: fc.record(numbersOf('stint', sample.stint)),
  })
  .map(({ laps, stand, at, rest }) => {
    const phases: object[] = [...laps];
    if (stand) phases.splice(at, 0, stand);
    return { ...rest, laps: laps.reduce((sum, phase) => sum + phase.laps, 0), hold_trace: true, phases };
  });

/** In one stint of four a side has a blanking of its own. */
const blanking = fc
  .record({
    axles: fc.record({ front: within('blanking_pct.front'), rear: within('blanking_pct.rear') }),
    side: fc.constantFrom(...sides),
    own: seldom(within('blanking_pct.front_left'), null),
  })
  .map(({ axles, side, own }) => (own === null ? axles : { ...axles, [side]: own }));

const initialOf = (axle: string) =>
  fc.record({
    disc_C: orNone(within(`initial.${axle}.disc_C`)),
    pad_C: orNone(within(`initial.${axle}.pad_C`)),
    caliper_C: orNone(within(`initial.${axle}.caliper_C`)),
  });

const factor = (name: string) =>
  fc.record({
    factor: fc.oneof(fc.constant(1), within(`correction.${name}.factor`)),
    reason: fc.constant(''),
    date: fc.constant(''),
  });

/** In one stint of four one side has another brake than its axle says. */
const otherSides = seldom(
  fc
    .record({ side: fc.constantFrom(...sides), brake: anyBrake })
    .map(({ side, brake }) => ({ [side]: brake })),
  {},
);

const car = partOf('car', sample.car, {
  name: fc.constant('drawn for a test'),
  driven_axle: fc.constantFrom('rear', 'front', 'both'),
  power_follows_density: fc.boolean(),
});

const ringMass = (brakes: { front: Brake; rear: Brake }): number =>
  2 * (brakes.front.disc.ring_mass_kg + brakes.rear.disc.ring_mass_kg);

/** What a person could have written into a file, before the parser has seen it. */
export const anyInput: fc.Arbitrary<object> = fc
  .record({
    car,
    perRing: between(...CAR_PER_RING),
    driver: partOf('driver', sample.driver),
    brakes: fc.record({ front: anyBrake, rear: anyBrake }),
    sides: otherSides,
    trace: fc.constantFrom(...shortLaps),
    conditions,
    traffic,
    stint,
    blanking_pct: blanking,
    initial: fc.record({ front: initialOf('front'), rear: initialOf('rear') }),
    correction: fc.record({
      heat: factor('heat'),
      cooling: factor('cooling'),
      emissivity: factor('emissivity'),
    }),
  })
  .map(({ perRing, ...drawn }) => {
    const mass_kg = clamped('car.mass_kg', perRing * ringMass(drawn.brakes));
    return { ...drawn, doubt: {}, car: { ...drawn.car, mass_kg } };
  });

/** A valid scenario. Throws where the parser refuses one: what is drawn here must be what the rules accept. */
export const anyScenario: fc.Arbitrary<Scenario> = anyInput.map((input) => {
  const parsed = parseScenario(input);
  if (!parsed.ok) throw new Error(parsed.problems.map(problemLine).join('\n'));
  return parsed.scenario;
});

/**
 * The same with nothing below the air around it at any time: colder things are warmed by air, and the more air the warmer.
 */
export const anyWarmScenario: fc.Arbitrary<Scenario> = anyScenario.map((scenario) => {
  const { ambient_C } = scenario.conditions;
  const phases = scenario.stint.phases.map((phase) => {
    const { 'conditions.ambient_C': _, ...rest } = phase.set ?? {};
    return { ...phase, set: rest };
  });
  const warm = (initial: Scenario['initial']['front']): Scenario['initial']['front'] => {
    const atLeast = (value: number | null): number | null => value && Math.max(value, ambient_C);
    const { disc_C, pad_C, caliper_C } = initial;
    return { disc_C: atLeast(disc_C), pad_C: atLeast(pad_C), caliper_C: atLeast(caliper_C) };
  };
  const { front, rear } = scenario.initial;
  return {
    ...scenario,
    stint: { ...scenario.stint, phases },
    initial: { front: warm(front), rear: warm(rear) },
  };
});
