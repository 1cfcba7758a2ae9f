import { describe, expect, it } from 'vitest';
import weekend from '../../scenarios/events/sorrelby-weekend.json' with { type: 'json' };
import { parseEvent, type RaceEvent } from '../../engine/scenario/event-parse.ts';
import { shippedStint } from '../../engine/scenario/library.ts';
import { panelSteps } from '../../engine/scenario/panel-steps.ts';
import { planGround } from '../../engine/scenario/plan-ground.ts';
import { problemLine } from '../../engine/scenario/problem.ts';

const ambient_C = { low: 12, likely: 16, high: 21 };
const event = (over: object = {}, session: object = {}): unknown => ({
  version: 1,
  name: 'one',
  sessions: [{ name: 'first', ambient_C, ...session }],
  ...over,
});

function linesOf(input: unknown): string[] {
  const parsed = parseEvent(input);
  return parsed.ok ? [] : parsed.problems.map(problemLine);
}

function eventOf(input: unknown): RaceEvent {
  const parsed = parseEvent(input);
  if (!parsed.ok) throw new Error(parsed.problems.map(problemLine).join('\n'));
  return parsed.event;
}

describe('an event file', () => {
  it('that is built in can be read, with its car and circuit', () => {
    const { scenario, sessions } = eventOf(weekend);
    expect(scenario.circuit.name).toBe('Sorrelby');
    expect(sessions.map(({ stops }) => stops)).toEqual([false, false, true]);
  });

  it('may leave out all but names and ambient', () => {
    const { sessions, set } = eventOf(event());
    expect(set).toEqual({ panels: 4, least_pct: 25, most_pct: 85 });
    expect(sessions[0]).toMatchObject({
      wet_pct: 0,
      stops: false,
      traffic_pct: { low: 0, likely: 0, high: 0 },
    });
  });

  const known = 'name, ambient_C, traffic_pct, gap_m, wet_pct, stops';
  it.each([
    [
      'a forecast low above high',
      event({}, { ambient_C: { low: 22, likely: 16, high: 21 } }),
      'sessions.0.ambient_C.low: expected at most high, 21, got 22',
    ],
    [
      'a likely value outside',
      event({}, { traffic_pct: { low: 0, likely: 60, high: 50 } }),
      'sessions.0.traffic_pct.likely: expected 0 to 50, low to high, got 60',
    ],
    [
      'a key that no session has',
      event({}, { rain_pct: 20 }),
      `sessions.0.rain_pct: expected a key of a session: ${known}, got 20`,
    ],
    [
      'a forecast without its likely value',
      event({}, { ambient_C: { low: 1, high: 2 } }),
      'sessions.0.ambient_C.likely: expected a value, got nothing',
    ],
    ['seven panels', event({ set: { panels: 7 } }), 'set.panels: expected a whole number, 2 to 5, got 7'],
    [
      'more panels than steps',
      event({ set: { panels: 4, least_pct: 70, most_pct: 80 } }),
      'set.panels: expected at most 3, the steps of 5 % from 70 to 80, got 4',
    ],
    [
      'a least above the most',
      event({ set: { least_pct: 60, most_pct: 40 } }),
      'set.least_pct: expected at most most_pct, 40, got 60',
    ],
    [
      'a window upside down',
      event({ stint: { brakes: { front: { window: { bite_C: 700 } } } } }),
      'stint.brakes.front.window.bite_C: expected less than face_peak_C, 650, got 700',
    ],
    [
      'a key that no scenario has',
      event({ stint: { weather: 3 } }),
      'stint.weather: expected a key of the scenario, got 3',
    ],
    [
      'a stint that is none',
      event({ stint: 'sorrelby' }),
      "stint: expected a scenario, as in its file, got 'sorrelby'",
    ],
    [
      'a sensor upside down',
      event({ sensor: { kind: 'infrared', lag_s: 0.1, face_emissivity: { low: 0.9, high: 0.5 } } }),
      'sensor.face_emissivity.low: expected at most high, 0.5, got 0.9',
    ],
    [
      'a sensor of no known kind',
      event({ sensor: { kind: 'paint', lag_s: 0.1 } }),
      "sensor.kind: expected infrared or rubbing, got 'paint'",
    ],
    [
      'a forecast in °F',
      event({}, { ambient_C: { low: 50, likely: 55, high: 68 } }),
      'sessions.0.ambient_C.high: expected -30 to 55, got 68 (Fahrenheit?)',
    ],
    ['no session', event({ sessions: [] }), 'sessions: expected at least one session, got []'],
    ['another version', event({ version: 2 }), 'version: expected 1, got 2'],
    ['a list', [], 'event: expected a JSON object, got []'],
    [
      'text for a number',
      event({}, { wet_pct: 'often' }),
      "sessions.0.wet_pct: expected 0 to 100, got 'often'",
    ],
  ])('with %s is refused by one line', (_, input, line) => {
    expect(linesOf(input)).toEqual([line]);
  });

  it('tells what stands in the wrong order beside what is wrong by itself', () => {
    const traffic_pct = { low: 0, likely: 5, high: 300 };
    const wrong = event(
      { set: { panels: 9, least_pct: 90, most_pct: 30 }, sensor: { kind: 'infrared' } },
      { ambient_C: { low: 30, likely: 20, high: 10 }, traffic_pct },
    );
    expect(linesOf(wrong).map((line) => line.split(':')[0])).toEqual([
      'sessions.0.traffic_pct.high',
      'set.panels',
      'sensor.lag_s',
      'sessions.0.ambient_C.low',
      'set.least_pct',
    ]);
    expect(linesOf(event({ sessions: 3, set: 4, sensor: 'x' }))).toHaveLength(3);
    expect(linesOf(event({ sessions: [1, null] }))).toHaveLength(2);
  });

  it('tells all that is wrong at once', () => {
    const both = event(
      { set: { panels: 7 }, stint: { weather: 3 } },
      { ambient_C: { low: 1, likely: 2, high: 300 } },
    );
    expect(linesOf(both)).toHaveLength(3);
  });
});

describe('the steps of panels', () => {
  it('go by 5 % from the least to the most, both ends in', () => {
    expect(panelSteps({ least_pct: 25, most_pct: 45 })).toEqual([25, 30, 35, 40, 45]);
    expect(panelSteps({ least_pct: 26, most_pct: 44 })).toEqual([30, 35, 40]);
  });
});

describe('the stint that an event is planned with', () => {
  it('leaves weather, traffic and blanking of its phases to the sessions, and says so', () => {
    const { scenario, left } = planGround(shippedStint('hour'));
    expect(left).toEqual([
      'stint.phases.3.set.blanking_pct.front',
      'stint.phases.5.gap_s',
      'stint.phases.8.set.conditions.wet',
      'stint.phases.8.set.conditions.ambient_C',
    ]);
    expect(planGround(scenario).left).toEqual([]);
    expect(scenario.stint.phases[3]).toMatchObject({ kind: 'stand', set: { 'car.fuel_kg': 60 } });
    expect(scenario.stint.phases[5]).toEqual({ kind: 'push', laps: 4, pull_out_kmh: 190 });
    expect(scenario.stint.phases[8]).toEqual({ kind: 'push', laps: 4 });
  });

  it('is the same object where nothing is left out', () => {
    const plain = shippedStint('sorrelby-20');
    expect(planGround(plain).scenario).toBe(plain);
  });
});
