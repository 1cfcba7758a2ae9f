import { describe, expect, it } from 'vitest';
import type { PhaseList } from '../../../web/display/phase-plan.ts';
import { loadChecks } from '../../../web/state/checks.ts';
import { Session } from '../../../web/state/session.svelte.ts';
import { added, removed, withLaps, withSet } from '../../../web/state/phase-edits.ts';

await loadChecks();

const idle = (): Session =>
  new Session(
    () => ({ run: () => new Promise(() => undefined), close: () => undefined }),
    () => () => undefined,
  );

describe('phases in the session', () => {
  it('change together with the laps of the stint as one named step', () => {
    const session = idle();
    const before = session.scenario;
    const { list } = added(withLaps(before.stint, 1, 18), 1, 'pit');
    expect(session.changePhases(list, 'pit stop added')).toEqual([]);
    session.settle();
    expect(session.scenario.stint.laps).toBe(22);
    expect(session.scenario.stint.phases).toHaveLength(7);
    expect(session.undoName).toBe('pit stop added');
    session.undo();
    expect(session.scenario).toBe(before);
  });

  it('are refused whole, with the reason, and without a complaint anywhere else', () => {
    const session = idle();
    const before = session.scenario;
    const none = before.stint.phases.reduce<PhaseList>((list) => removed(list, 0).list, before.stint);
    expect(session.changePhases(none, 'all removed').map(({ key }) => key)).toContain('stint.phases');
    const hot = withSet(before.stint, 1, { 'conditions.ambient_C': 295 });
    expect(session.changePhases(hot, 'ambient')).not.toEqual([]);
    expect(session.scenario).toBe(before);
    expect(session.undoName).toBeNull();
    expect(session.complaints).toEqual([]);
  });
});
