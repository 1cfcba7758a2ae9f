/** The event: which sessions are driven in what weather and traffic, and how many panels may be brought. One JSON object. */
import * as v from 'valibot';
import { count, flag, quantity, text } from './field.ts';
import { objectOf } from './object-of.ts';
import { sensorSchema } from './sensor-schema.ts';

const EVENT_VERSION = 1;

type Limits = readonly [min: number, max: number, step: number];

/** Nothing is outside low and high. */
const forecast = (label: string, limits: Limits, meaning: string) =>
  objectOf('a forecast', {
    low: quantity(`${label}, lowest`, limits, `${meaning}: the least that may come`),
    likely: quantity(`${label}, likely`, limits, `${meaning}: the most probable`),
    high: quantity(`${label}, highest`, limits, `${meaning}: the most that may come`),
  });

const AIR: Limits = [-30, 55, 1];
const SHARE: Limits = [0, 100, 5];
const NO_TRAFFIC = { low: 0, likely: 0, high: 0 };

const sessionSchema = objectOf('a session', {
  name: text('Session', 'What it is called'),
  ambient_C: forecast('Ambient', AIR, 'Air temperature in the shade'),
  traffic_pct: v.optional(
    forecast('Laps in traffic', SHARE, 'Share of the laps behind another car'),
    NO_TRAFFIC,
  ),
  gap_m: v.optional(quantity('Gap in traffic', [1, 500, 1], 'Nose to tail, on the laps in traffic'), 20),
  wet_pct: v.optional(quantity('Chance of a wet track', SHARE, 'With the spray of the stint'), 0),
  stops: v.optional(
    flag('Stop planned', 'At a stop tape comes off: the session starts one panel more closed'),
    false,
  ),
});

const COVERED: Limits = [5, 100, 5];

const setSchema = objectOf('the set', {
  panels: v.optional(count('Panels', [2, 5], 'How many are brought; an open mouth is always at hand'), 4),
  least_pct: v.optional(quantity('Least blanking of a panel', COVERED, 'Less is not worth a panel'), 25),
  most_pct: v.optional(
    quantity('Most blanking of a panel', COVERED, 'More leaves fluid and pads without air'),
    85,
  ),
});

export const eventSchema = objectOf('an event', {
  version: v.literal(EVENT_VERSION, `${EVENT_VERSION}`),
  name: text('Event', 'What it is called'),
  /** As in a scenario file; what it leaves out is taken from the default scenario. */
  stint: v.optional(v.unknown(), {}),
  sessions: v.pipe(
    v.array(sessionSchema, 'a list of sessions'),
    v.minLength(1, 'at least one session'),
    v.maxLength(12, 'at most 12 sessions'),
  ),
  set: v.optional(setSchema, {}),
  /** That limits are given in the reading of; null: none. */
  sensor: v.optional(v.nullable(sensorSchema), null),
});

export type EventFile = v.InferOutput<typeof eventSchema>;
export type Session = EventFile['sessions'][number];
export type Forecast = Session['ambient_C'];
export type SetWanted = EventFile['set'];
