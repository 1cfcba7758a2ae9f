/** From anything that claims to be an event to a checked one with its whole stint, or to the full list of what is wrong. */
import * as v from 'valibot';
import { eventSchema, type EventFile, type Forecast, type Session, type SetWanted } from './event-schema.ts';
import { PANEL_STEP_PCT, panelSteps } from './panel-steps.ts';
import { problem, tooHotHint, type Problem } from './problem.ts';
import type { Scenario } from './schema.ts';
import { isTree } from './tree.ts';
import { wholeScenario, type Whole } from './whole.ts';

export interface RaceEvent extends Omit<EventFile, 'stint'> {
  /** What every session drives, but for weather and traffic. */
  scenario: Scenario;
  /** What was changed in a stint of an earlier version, in words. */
  changed: readonly string[];
}

export type ParsedEvent = { ok: true; event: RaceEvent } | { ok: false; problems: Problem[] };

/** Never throws: every problem comes back with its key, its value and what was expected. */
export function parseEvent(input: unknown): ParsedEvent {
  if (!isTree(input)) return { ok: false, problems: [problem('event', input, 'a JSON object')] };
  const checked = v.safeParse(eventSchema, input);
  const stint = stintOf(input['stint'] ?? {});
  const inFields = checked.success ? [] : checked.issues.map(problemOf);
  const problems = [
    ...inFields,
    ...togetherProblems(checked.output as EventFile, inFields),
    ...(stint.ok ? [] : stint.problems),
  ];
  if (!checked.success || !stint.ok || problems.length > 0) return { ok: false, problems };
  const { stint: _, ...rest } = checked.output;
  return { ok: true, event: { ...rest, scenario: stint.scenario, changed: stint.changed } };
}

function stintOf(file: unknown): Whole {
  if (!isTree(file)) return { ok: false, problems: [problem('stint', file, 'a scenario, as in its file')] };
  const whole = wholeScenario(file, 'stint');
  if (whole.ok) return whole;
  return { ok: false, problems: whole.problems.map((each) => ({ ...each, key: `stint.${each.key}` })) };
}

function problemOf({ path, input, message }: v.BaseIssue<unknown>): Problem {
  const key = path?.map((part) => String(part.key)).join('.') || 'event';
  const value = path ? path.at(-1)!.value : input;
  const isTooHot = key.includes('ambient_C.') && typeof value === 'number' && value > 0;
  return problem(key, value, message, isTooHot ? tooHotHint(value) : '');
}

/** What no single field can tell, and the fields that must be right for it to be told. */
type Together = readonly [keys: readonly string[], problems: () => Problem[]];

/** Told beside what is wrong with other fields, so that all is told at once. */
function togetherProblems(event: EventFile, wrong: readonly Problem[]): Problem[] {
  const isWrong = (key: string): boolean =>
    wrong.some(
      (each) => each.key === key || each.key.startsWith(`${key}.`) || key.startsWith(`${each.key}.`),
    );
  const all = [
    ...(Array.isArray(event.sessions) ? event.sessions.flatMap(ofSession) : []),
    ...ofSet(event),
    ...ofSensor(event),
  ];
  return all.flatMap(([keys, problems]) => (keys.some(isWrong) ? [] : problems()));
}

const ofSession = (session: Session, i: number): Together[] =>
  (['ambient_C', 'traffic_pct'] as const).map((name): Together => {
    const key = `sessions.${i}.${name}`;
    return [[key], () => forecastProblems(key, session[name])];
  });

const ofSet = ({ set }: EventFile): Together[] => [
  [['set.least_pct', 'set.most_pct'], () => orderProblems(set)],
  [['set.least_pct', 'set.most_pct', 'set.panels'], () => roomProblems(set)],
];

const ofSensor = ({ sensor }: EventFile): Together[] =>
  (['face_emissivity', 'off_K'] as const).map((name): Together => {
    const key = `sensor.${name}`;
    return [[key], () => (sensor ? endsProblems(key, sensor[name]) : [])];
  });

function forecastProblems(key: string, { low, likely, high }: Forecast): Problem[] {
  const ends = endsProblems(key, { low, high });
  if (ends.length > 0) return ends;
  if (likely < low || likely > high)
    return [problem(`${key}.likely`, likely, `${low} to ${high}, low to high`)];
  return [];
}

const orderProblems = ({ least_pct, most_pct }: SetWanted): Problem[] =>
  least_pct > most_pct ? [problem('set.least_pct', least_pct, `at most most_pct, ${most_pct}`)] : [];

function roomProblems({ panels, least_pct, most_pct }: SetWanted): Problem[] {
  const steps = panelSteps({ least_pct, most_pct }).length;
  if (panels <= steps || least_pct > most_pct) return [];
  const expected = `at most ${steps}, the steps of ${PANEL_STEP_PCT} % from ${least_pct} to ${most_pct}`;
  return [problem('set.panels', panels, expected)];
}

const endsProblems = (key: string, { low, high }: { low: number; high: number }): Problem[] =>
  low > high ? [problem(`${key}.low`, low, `at most high, ${high}`)] : [];
