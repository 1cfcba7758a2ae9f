/** From anything that claims to be an event to a checked one with its whole stint, or to the full list of what is wrong. */
import * as v from 'valibot';
import { eventSchema, type EventFile, type Forecast, type SetWanted } from './event-schema.ts';
import { PANEL_STEP_PCT, panelSteps } from './panel-steps.ts';
import { problem, type Problem } from './problem.ts';
import type { Scenario } from './schema.ts';
import type { Sensor } from './sensor-schema.ts';
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
  const problems = [
    ...(checked.success ? togetherProblems(checked.output) : checked.issues.map(problemOf)),
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
  const parts = path?.map((part) => String(part.key)) ?? [];
  return problem(parts.join('.') || 'event', path ? path.at(-1)!.value : input, message);
}

/** What no single field can tell. */
const togetherProblems = ({ sessions, set, sensor }: EventFile): Problem[] => [
  ...sessions.flatMap(({ ambient_C, traffic_pct }, i) => [
    ...forecastProblems(`sessions.${i}.ambient_C`, ambient_C),
    ...forecastProblems(`sessions.${i}.traffic_pct`, traffic_pct),
  ]),
  ...setProblems(set),
  ...(sensor ? sensorProblems(sensor) : []),
];

function forecastProblems(key: string, { low, likely, high }: Forecast): Problem[] {
  const ends = endsProblems(key, { low, high });
  if (ends.length > 0) return ends;
  if (likely < low || likely > high)
    return [problem(`${key}.likely`, likely, `${low} to ${high}, low to high`)];
  return [];
}

function setProblems({ panels, least_pct, most_pct }: SetWanted): Problem[] {
  if (least_pct > most_pct) return [problem('set.least_pct', least_pct, `at most most_pct, ${most_pct}`)];
  const steps = panelSteps({ least_pct, most_pct }).length;
  return panels > steps
    ? [
        problem(
          'set.panels',
          panels,
          `at most ${steps}, the steps of ${PANEL_STEP_PCT} % from ${least_pct} to ${most_pct}`,
        ),
      ]
    : [];
}

const sensorProblems = ({ face_emissivity, off_K }: Sensor): Problem[] => [
  ...endsProblems('sensor.face_emissivity', face_emissivity),
  ...endsProblems('sensor.off_K', off_K),
];

const endsProblems = (key: string, { low, high }: { low: number; high: number }): Problem[] =>
  low > high ? [problem(`${key}.low`, low, `at most high, ${high}`)] : [];
