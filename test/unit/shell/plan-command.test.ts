import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { finished } from '../../../engine/advise/finished.ts';
import { planFor } from '../../../engine/advise/plan.ts';
import type { PlanRecord } from '../../../engine/report/plan-record.ts';
import { smallEvent } from '../../support/events.ts';
import { plan } from '../../support/terminal.ts';
import { toyStint } from '../../support/toy-stint.ts';

const folder = mkdtempSync(join(tmpdir(), 'plan-'));
afterAll(() => rmSync(folder, { recursive: true }));

const fileOf = (content: unknown): string => {
  const path = join(folder, 'event.json');
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
};

const toy = toyStint({ 'brakes.front.duct.recovery': [0.7, 0.9] });
const event = { version: 1, name: 'A short one', stint: toy, ...smallEvent };

describe('npm run plan', () => {
  const file = fileOf(event);
  const { status, stdout, stderr } = plan([file, '--json']);
  const record = JSON.parse(stdout) as PlanRecord;

  it('gives set, rule, regret and what stays uncovered as one object', () => {
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout.trimEnd().split('\n')).toHaveLength(1);
    const keys = ['set', 'covered_pct', 'rule', 'regret', 'uncovered', 'sessions', 'doubt'];
    for (const axle of ['front', 'rear'] as const)
      expect(Object.keys(record.axles[axle]!)).toEqual(expect.arrayContaining(keys));
  });

  it('has the same set and rule as the search that the page asks', () => {
    const { axles } = finished(planFor(toy, smallEvent));
    for (const { axle, panels, rule } of axles) {
      const told = record.axles[axle]!;
      expect(told.set.map(({ blanking_pct }) => blanking_pct)).toEqual(
        panels.map(({ blanking_pct }) => blanking_pct),
      );
      expect(told.rule.lines.map(({ when }) => when)).toEqual(rule.lines.map(({ when }) => when));
    }
  });

  it('says that a window without a source is not for a car', () => {
    expect(record.notices).toContain('a window without a named source: not for use on a car');
  });

  it('shows a table without --json, in words', () => {
    const { stdout: table } = plan([file]);
    expect(table).toMatch(/^A short one\n/);
    expect(table).toMatch(/bring {2}open, A \d+ % \(\+\d+ K\), B \d+ %/);
    expect(table).toMatch(/fit (A|B|open): /);
    expect(table).toMatch(/the day turned out +fitted open +fitted A +fitted B/);
    expect(table).toMatch(/K too (hot|cold)/);
    expect(table).not.toMatch(/NaN|undefined|Infinity/);
  });
});

describe('a plan that is refused', () => {
  it('says every problem on a line of its own, and nothing else', () => {
    const wrong = {
      ...event,
      sessions: [{ ...smallEvent.sessions[0], ambient_C: { low: 30, likely: 20, high: 10 }, rain: 3 }],
      set: { panels: 7 },
    };
    const { status, stdout, stderr } = plan([fileOf(wrong), '--json']);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr.trimEnd().split('\n')).toEqual([
      expect.stringMatching(/^sessions\.0\.rain: expected a key of a session: name, .+, got 3$/),
      'set.panels: expected a whole number, 2 to 5, got 7',
      'sessions.0.ambient_C.low: expected at most high, 10, got 30',
    ]);
  });

  it.each([
    [
      'a forecast low above high',
      { sessions: [{ name: 'a', ambient_C: { low: 9, likely: 9, high: 3 } }] },
      'sessions.0.ambient_C.low: expected at most high, 3, got 9',
    ],
    [
      'a window upside down',
      { stint: { brakes: { rear: { window: { bite_C: 800 } } } } },
      'stint.brakes.rear.window.bite_C: expected less than face_peak_C, 600, got 800',
    ],
  ])('for %s says that', (_, over, line) => {
    const { status, stdout, stderr } = plan([fileOf({ ...event, ...over })]);
    expect([status, stdout, stderr]).toEqual([2, '', `${line}\n`]);
  });

  it('for a file that is none, or two, says that', () => {
    expect(plan([join(folder, 'none.json')]).stderr).toMatch(
      /^event: expected an event file that can be read, got '.*none\.json'/,
    );
    expect(plan([fileOf('{')]).stderr).toMatch(/^event: expected a file of JSON, got /);
    const { status, stderr } = plan(['a.json', 'b.json']);
    expect([status, stderr]).toEqual([
      2,
      expect.stringMatching(/^command line: one event file, got 2\nusage: /),
    ]);
  });
});
