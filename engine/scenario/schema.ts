/** The scenario: one JSON object that holds everything a stint's temperatures depend on. Units are in the keys. */
import * as v from 'valibot';
import { brakeSchema, type ductSchema } from './brake-schema.ts';
import { carSchema, driverSchema } from './car-schema.ts';
import { quantity, text } from './field.ts';
import { circuitSchema, conditionsSchema, stintSchema, traceSchema, trafficSchema } from './stint-schema.ts';

export const SCENARIO_VERSION = 1;

const blanking = (label: string) => quantity(label, [0, 100, 1], 'Share of the mouth that is covered');

/** Start temperatures; null means ambient. */
const initialSchema = v.looseObject({
  disc_C: v.nullable(
    quantity('Disc at the start', [-30, 900, 5], 'Disc and bell as the stint begins; none: ambient'),
  ),
  pad_C: v.nullable(quantity('Pads at the start', [-30, 700, 5], 'Pads and plates; none: ambient')),
  caliper_C: v.nullable(quantity('Caliper at the start', [-30, 250, 5], 'Caliper and fluid; none: ambient')),
});

const factorSchema = v.looseObject({
  factor: quantity('Correction', [0.5, 2], 'Measured over modelled; 1 leaves the model as it is'),
  reason: text('Reason', 'What was measured'),
  date: text('Date', 'When'),
});

/** How far a guess may be off: the value in the scenario is the likely one, and nothing is outside low and high. */
const doubtSchema = v.looseObject({
  low: v.number('a number'),
  high: v.number('a number'),
  reason: text('Reason', 'Why this range'),
});

export const scenarioSchema = v.looseObject({
  version: v.literal(SCENARIO_VERSION, `${SCENARIO_VERSION}`),
  name: text('Name', 'What this stint is called'),
  purpose: text('Purpose', 'What it is for'),
  car: carSchema,
  driver: driverSchema,
  brakes: v.looseObject({ front: brakeSchema, rear: brakeSchema }),
  /** Where one side differs: part of a brake, laid over its axle's. */
  sides: v.looseObject({
    front_left: v.optional(v.record(v.string(), v.unknown())),
    front_right: v.optional(v.record(v.string(), v.unknown())),
    rear_left: v.optional(v.record(v.string(), v.unknown())),
    rear_right: v.optional(v.record(v.string(), v.unknown())),
  }),
  circuit: circuitSchema,
  /** A measured lap that takes the place of the driver model, or null. */
  trace: v.nullable(traceSchema),
  conditions: conditionsSchema,
  traffic: trafficSchema,
  stint: stintSchema,
  blanking_pct: v.looseObject({
    front: blanking('Front blanking'),
    rear: blanking('Rear blanking'),
    front_left: v.optional(blanking('Front left blanking')),
    front_right: v.optional(blanking('Front right blanking')),
    rear_left: v.optional(blanking('Rear left blanking')),
    rear_right: v.optional(blanking('Rear right blanking')),
  }),
  initial: v.looseObject({ front: initialSchema, rear: initialSchema }),
  correction: v.looseObject({ heat: factorSchema, cooling: factorSchema, emissivity: factorSchema }),
  /** Dotted key of a guessed value to its range. */
  doubt: v.record(v.string(), doubtSchema),
});

export type Scenario = v.InferOutput<typeof scenarioSchema>;
export type Brake = v.InferOutput<typeof brakeSchema>;
export type Duct = v.InferOutput<typeof ductSchema>;
export type Circuit = v.InferOutput<typeof circuitSchema>;
export type Phase = Scenario['stint']['phases'][number];
