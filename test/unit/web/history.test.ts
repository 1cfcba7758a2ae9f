import { describe, expect, it } from 'vitest';
import { emptyHistory, noted, redone, settled, undone, type History } from '../../../web/state/history.ts';

const [a, b, c] = ['a', 'b', 'c'] as const;

describe('undo', () => {
  it('goes back to the scenario before the step, and forward again', () => {
    const back = undone(noted<string>(emptyHistory, a, 'ambient'), b);
    expect(back?.state).toBe(a);
    expect(redone(back!.history, a)?.state).toBe(b);
  });

  it('takes one drag as one step', () => {
    const dragged = noted(noted<string>(emptyHistory, a, 'front blanking'), b, 'front blanking');
    expect(undone(dragged, c)?.state).toBe(a);
  });

  it('takes two drags of one control as two steps', () => {
    const twice = noted(settled(noted<string>(emptyHistory, a, 'front blanking')), b, 'front blanking');
    expect(undone(twice, c)?.state).toBe(b);
  });

  it('forgets what was undone when something else is done', () => {
    const back = undone(noted<string>(emptyHistory, a, 'ambient'), b)!;
    expect(redone(noted(back.history, a, 'laps'), c)).toBeNull();
  });

  it('has nothing to undo at the start', () => {
    expect(undone(emptyHistory, a)).toBeNull();
    expect(redone(emptyHistory, a)).toBeNull();
  });

  it('knows which value a step changes, there and back', () => {
    const done = noted<string>(emptyHistory, a, 'ambient', 'conditions.ambient_C');
    expect(done.past.at(-1)?.key).toBe('conditions.ambient_C');
    const back = undone(done, b)!;
    expect(back.history.future.at(-1)?.key).toBe('conditions.ambient_C');
    expect(redone(back.history, a)?.history.past.at(-1)?.key).toBe('conditions.ambient_C');
  });

  it('keeps 200 steps', () => {
    let history: History<string> = emptyHistory;
    for (let i = 0; i < 300; i++) history = settled(noted(history, a, String(i)));
    expect(history.past).toHaveLength(200);
  });
});
