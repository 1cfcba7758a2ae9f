import { beforeEach, describe, expect, it } from 'vitest';
import type { RunRequest, Scenario } from '../../../engine/index.ts';
import { defaultScenario } from '../../../engine/scenario/default-scenario.ts';
import { withValue } from '../../../engine/scenario/tree.ts';
import { loadChecks } from '../../../web/state/checks.ts';
import { Session } from '../../../web/state/session.svelte.ts';
import { sampleResult } from '../../support/sample-result.ts';

await loadChecks();

const result = sampleResult({ samplesPerLap: 40 });
const frontAt = (share: number): Scenario =>
  withValue(defaultScenario(), 'blanking_pct.front', share) as Scenario;

describe('a session and whole scenarios', () => {
  let asked: RunRequest[];
  const open = (scenario?: Scenario): Session =>
    new Session(
      () => ({
        run: (request) => {
          asked.push(request);
          return Promise.resolve({ id: request.id, kind: 'result', result, elapsed_ms: 1 });
        },
        close: () => undefined,
      }),
      () => () => undefined,
      scenario,
    );

  beforeEach(() => (asked = []));

  it('opens with the one it is given, itself, and asks for no other', () => {
    const kept = frontAt(12);
    expect(open(kept).scenario).toBe(kept);
    expect(asked.map(({ scenario }) => scenario)).toEqual([kept]);
  });

  it('takes over another as a step with its name, which undo takes back', () => {
    const session = open(frontAt(12));
    const before = session.scenario;
    expect(session.replace(frontAt(40), 'file')).toEqual([]);
    expect(session.scenario.blanking_pct.front).toBe(40);
    expect(session.undoName).toBe('file');
    session.undo();
    expect(session.scenario).toBe(before);
  });

  it('refuses one that is wrong, names what is, and keeps what it has', () => {
    const session = open(frontAt(12));
    expect(session.replace(frontAt(300), 'file')).toMatchObject([
      { key: 'blanking_pct.front', value: '300' },
    ]);
    expect(session.scenario.blanking_pct.front).toBe(12);
    expect(session.undoName).toBeNull();
  });

  it('puts steps of an earlier time before those taken since', () => {
    const earlier = open(frontAt(10));
    earlier.change({ 'blanking_pct.front': 20 }, 'front blanking');
    earlier.settle();
    earlier.change({ 'blanking_pct.front': 30 }, 'front blanking');
    earlier.undo();
    const { past, future } = earlier.history;
    const session = open(earlier.scenario);
    session.remember({ past, future });
    session.redo();
    expect(session.scenario.blanking_pct.front).toBe(30);
    session.undo();
    session.undo();
    expect(session.scenario.blanking_pct.front).toBe(10);

    const busy = open(earlier.scenario);
    busy.change({ 'blanking_pct.front': 55 }, 'front blanking');
    busy.remember({ past, future });
    expect(busy.redoName).toBeNull();
    busy.undo();
    busy.undo();
    expect(busy.scenario.blanking_pct.front).toBe(10);
  });

  it('does not go to a step of another version, and says what is wrong with it', () => {
    const session = open(frontAt(10));
    const state = { scenario: frontAt(300), pins: [] };
    session.remember({ past: [{ name: 'front blanking', key: null, state }], future: [] });
    session.undo();
    expect(session.scenario.blanking_pct.front).toBe(10);
    expect(session.complaints).toEqual(['blanking_pct.front: expected 0 to 100, got 300']);
  });
});
