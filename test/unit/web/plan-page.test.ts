import { describe, expect, it } from 'vitest';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import type { MapCell, MapCorner, PlannedPanel } from '../../../engine/index.ts';
import { conditionsView, movedCell } from '../../../web/charts/conditions-view.ts';
import { doneWords, ruleWords } from '../../../web/display/plan-words.ts';
import { pageAt } from '../../../web/frame/pages.ts';
import {
  checkEvent,
  eventText,
  exampleEvent,
  readEvent,
  refusedWords,
  withoutSession,
  withSensorKind,
  withSession,
  withSessionAt,
} from '../../../web/state/event-part.ts';
import { changed, driven } from '../../support/stints.ts';
import { mapAsked, valueText } from '../../../web/state/map-axes.ts';

const plainly = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('the event of the sheet', () => {
  it('comes back from its file as it was, with its stint', () => {
    const event = withSession(exampleEvent());
    const read = readEvent(eventText(event, defaultScenario()));
    expect(read).toMatchObject({ ok: true, event, scenario: defaultScenario() });
  });

  it('names what is wrong with a forecast upside down in one line', () => {
    const wrong = withSessionAt(exampleEvent(), 1, { ambient_C: { low: 30, likely: 20, high: 10 } });
    expect(checkEvent(wrong)).toMatchObject({ ok: false, problems: [{ key: 'sessions.1.ambient_C.low' }] });
    expect(readEvent('{"version": 1')).toMatchObject({
      ok: false,
      problems: [expect.stringMatching(/^file: expected JSON/)],
    });
  });

  it('says in words that the steps have no room for the panels', () => {
    const event = { ...exampleEvent(), set: { panels: 5, least_pct: 60, most_pct: 75 } };
    expect(plainly(refusedWords(event))).toBe(
      'room for 5 panels, one in every 5 %, from the least to the most that one covers',
    );
    expect(refusedWords(exampleEvent())).toBe('');
  });

  it('keeps what is told of a sensor when it becomes another and back, but for its lag', () => {
    const infrared = withSensorKind(null, 'infrared')!;
    const set = { ...infrared, set_emissivity: 0.9 };
    const back = withSensorKind(withSensorKind(set, 'rubbing'), 'infrared');
    expect(back).toEqual(set);
    expect(withSensorKind(set, 'rubbing')!.lag_s).toBeGreaterThan(infrared.lag_s);
    expect(withSensorKind(set, 'none')).toBeNull();
  });

  it('reads an event that was kept before sensors were told of', () => {
    const { sensor: _, ...before } = exampleEvent();
    expect(checkEvent(before)).toMatchObject({ ok: true });
    expect(readEvent(eventText(before, defaultScenario()))).toMatchObject({
      ok: true,
      event: { sensor: null },
    });
  });

  it('gives a session that is added a name that none has', () => {
    const without = withoutSession(withSession(exampleEvent()), 0);
    const names = withSession(without).sessions.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  });
});

describe('the map of conditions', () => {
  it('is asked for in at least 12 by 8 conditions, each ambient another', () => {
    const { across, down } = mapAsked(exampleEvent().sessions, 'gap');
    expect(new Set(across.values).size).toBe(12);
    expect(down.values.length).toBe(8);
    expect(across.values.at(0)).toBe(12);
    expect(across.values.at(-1)).toBe(31);
  });

  it('keeps its ambients within what a scenario allows, however hot the only forecast', () => {
    const hot = withSessionAt(exampleEvent(), 0, { ambient_C: { low: 54, likely: 55, high: 55 } });
    const { across } = mapAsked(hot.sessions.slice(0, 1), 'track');
    expect(new Set(across.values).size).toBe(12);
    expect(Math.max(...across.values.map(Number))).toBe(55);
  });

  it('is asked for over the pace by how long the driver coasts, which cools every corner', () => {
    const { down } = mapAsked(exampleEvent().sessions, 'pace');
    expect(down.values.map((value) => valueText(down.key, value))).toContain('coast 0.50\u00a0s');
    const peaks = down.values.map((value) =>
      driven(changed({ [down.key]: value })).corners.map(({ verdict }) => verdict.facePeak_K),
    );
    for (const corner of [0, 1])
      expect(peaks.map((each) => each[corner]!)).toEqual(
        peaks.map((each) => each[corner]!).toSorted((a, b) => b - a),
      );
    expect(new Set(peaks.map(([front]) => front)).size).toBe(8);
  });

  it('writes on each region its panel, or why there is none', () => {
    const best = { blanking_pct: 50, hotMargin_K: 10, coldMargin_K: 10, weighed_K: 10 };
    const out = { ...best, hotMargin_K: -10 };
    const rows: MapCell[][] = [
      [
        { span_pct: [0, 60], best, why: null, fit: 1 },
        { span_pct: [45, 60], best, why: null, fit: null },
        { span_pct: null, best: out, why: 'hot when open', fit: null },
      ],
    ];
    const panels = ['', 'A'].map((letter, i) => ({ letter, blanking_pct: 30 * i }) as PlannedPanel);
    const corner = { rows } as unknown as MapCorner;
    const { letters, noPanel, frame } = conditionsView(corner, panels, 380);
    expect(letters.map(({ text, isPanel }) => [text, isPanel])).toEqual([
      ['A', true],
      ['no panel', false],
      ['too hot', false],
    ]);
    // the one cell in the middle
    expect(noPanel).toMatch(new RegExp(`^M${frame.left + frame.width / 3} [^M]*Z$`));
  });

  it('is walked by arrow keys and never left', () => {
    const size = { rows: 8, columns: 12 };
    expect(movedCell({ row: 0, column: 0 }, 'ArrowUp', size)).toEqual({ row: 0, column: 0 });
    expect(movedCell({ row: 7, column: 3 }, 'ArrowDown', size)).toEqual({ row: 7, column: 3 });
    expect(movedCell({ row: 2, column: 3 }, 'End', size)).toEqual({ row: 2, column: 11 });
    expect(movedCell({ row: 2, column: 3 }, 'x', size)).toBeNull();
  });
});

describe('the words of a plan', () => {
  it('say a rule by its thresholds', () => {
    const at = { above_C: null, below_C: null, isFollowing: null, isWet: null };
    expect(
      plainly(
        ruleWords({
          when: [
            { ...at, below_C: 18, isFollowing: false },
            { ...at, isWet: true },
          ],
        }),
      ),
    ).toBe('below 18 °C and in clear air, or wet');
    expect(ruleWords({ when: [at] })).toBe('always');
  });

  it('say by how much a day is in or out', () => {
    expect(plainly(doneWords({ status: 'in', hotMargin_K: 12, coldMargin_K: Infinity }))).toBe(
      'in, 12 K to spare',
    );
    expect(plainly(doneWords({ status: 'both', hotMargin_K: -5, coldMargin_K: -8 }))).toBe(
      '5 K too hot and 8 K too cold',
    );
  });
});

describe('the pages', () => {
  it('are asked for by their addresses, and the stint is what is left', () => {
    expect(['#plan', '#cut', '#trust', '', '#s=abc'].map(pageAt)).toEqual([
      'plan',
      'cut',
      'trust',
      'stint',
      'stint',
    ]);
  });
});
