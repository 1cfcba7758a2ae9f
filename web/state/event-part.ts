/** The event of the sheet: what it starts as, how a change of it is checked, and its file. Pure. */
import * as v from 'valibot';
import weekend from '../../scenarios/events/sorrelby-weekend.json' with { type: 'json' };
import type { Scenario } from '../../engine/index.ts';
import { parseEvent, type RaceEvent } from '../../engine/scenario/event-parse.ts';
import { eventSchema, type EventFile, type Session } from '../../engine/scenario/event-schema.ts';
import { PANEL_STEP_PCT } from '../../engine/scenario/panel-steps.ts';
import { problemLine, type Problem } from '../../engine/scenario/problem.ts';
import { sensorSchema, type Sensor, type SensorKind } from '../../engine/scenario/sensor-schema.ts';
import { NBSP } from '../display/format.ts';
import { jsonFrom, plain } from './sheet-file.ts';

/** An event but for its stint, which is that of the sheet. */
export interface EventPart extends Pick<EventFile, 'name' | 'sessions' | 'set'> {
  /** null, or nothing in an event that was kept by an earlier version: none. */
  sensor?: EventFile['sensor'];
}

/** Of the file. */
const VERSION = 1;

const partOf = ({ name, sessions, set, sensor }: Pick<RaceEvent, keyof EventPart>): EventPart => ({
  name,
  sessions,
  set,
  sensor,
});

/** What the page opens with: invented, to be written over. */
export const exampleEvent = (): EventPart => partOf(v.parse(eventSchema, weekend));

export type Changed = { ok: true; event: EventPart } | { ok: false; problems: readonly Problem[] };

/** A changed event, or all that is wrong with it. */
export function checkEvent(event: EventPart): Changed {
  const parsed = parseEvent({ version: VERSION, ...event });
  return parsed.ok ? { ok: true, event } : parsed;
}

/** What was expected instead of a change; empty where it is right. */
export function refusedWords(event: EventPart): string {
  const checked = checkEvent(event);
  const [first] = checked.ok ? [] : checked.problems;
  if (!first) return '';
  // no fault of one field: the set would be too small for its panels
  return first.key === 'set.panels'
    ? `room for ${event.set.panels} panels, one in every ${PANEL_STEP_PCT}${NBSP}%, from the least to the most that one covers`
    : first.expected;
}

export const isEvent = (event: EventPart): boolean => checkEvent(event).ok;

/** "Session 4", with the forecast of the last one: it is the nearest guess. */
export function withSession({ sessions, ...rest }: EventPart): EventPart {
  const last = sessions.at(-1);
  if (!last) throw new Error('sessions: none'); // no event is without
  const names = sessions.map(({ name }) => name);
  let number = sessions.length + 1;
  while (names.includes(`Session ${number}`)) number += 1;
  return { ...rest, sessions: [...sessions, { ...last, name: `Session ${number}` }] };
}

export const withoutSession = ({ sessions, ...rest }: EventPart, at: number): EventPart => ({
  ...rest,
  sessions: sessions.filter((_, i) => i !== at),
});

export const withSessionAt = (
  { sessions, ...rest }: EventPart,
  at: number,
  changed: Partial<Session>,
): EventPart => ({
  ...rest,
  sessions: sessions.map((session, i) => (i === at ? { ...session, ...changed } : session)),
});

/** How late a sensor of each kind usually is (common practice, no source) [s] */
const USUAL_LAG_S: Record<SensorKind, number> = { infrared: 0.1, rubbing: 0.5 };

/** Of another kind, with the lag that is usual for it; what else was told of it is kept. */
export function withSensorKind(sensor: Sensor | null, kind: SensorKind | 'none'): Sensor | null {
  if (kind === 'none') return null;
  return v.parse(sensorSchema, { ...sensor, kind, lag_s: USUAL_LAG_S[kind] });
}

/** The event with the stint of the sheet: one file that the terminal reads too. */
export const eventText = ({ name, sessions, set, sensor = null }: EventPart, stint: Scenario): string =>
  `${JSON.stringify({ version: VERSION, name, stint, sessions, set, sensor }, null, 2)}\n`;

export const eventFileName = ({ name }: EventPart): string => `${plain(name) || 'event'}-plan.json`;

export type ReadEvent =
  | { ok: true; event: EventPart; scenario: Scenario; notes: readonly string[] }
  | { ok: false; problems: readonly string[] };

/** What a file of an event holds, or everything that is wrong with it, one line each. */
export function readEvent(text: string): ReadEvent {
  const json = jsonFrom(text);
  if ('problem' in json) return { ok: false, problems: [json.problem] };
  const parsed = parseEvent(json.value);
  if (!parsed.ok) return { ok: false, problems: parsed.problems.map(problemLine) };
  const { event } = parsed;
  return { ok: true, event: partOf(event), scenario: event.scenario, notes: event.changed };
}
