import { describe, expect, it } from 'vitest';
import type { Scenario } from '../../../engine/index.ts';
import { emptyHistory, noted, redone, settled, undone } from '../../../web/state/history.ts';

const [a, b, c] = ['a', 'b', 'c'].map((name) => ({ name }) as Scenario) as [Scenario, Scenario, Scenario];

describe('undo', () => {
  it('goes back to the scenario before the step, and forward again', () => {
    const back = undone(noted(emptyHistory, a, 'ambient'), b);
    expect(back?.scenario).toBe(a);
    expect(redone(back!.history, a)?.scenario).toBe(b);
  });

  it('takes one drag as one step', () => {
    const dragged = noted(noted(emptyHistory, a, 'front blanking'), b, 'front blanking');
    expect(undone(dragged, c)?.scenario).toBe(a);
  });

  it('takes two drags of one control as two steps', () => {
    const twice = noted(settled(noted(emptyHistory, a, 'front blanking')), b, 'front blanking');
    expect(undone(twice, c)?.scenario).toBe(b);
  });

  it('forgets what was undone when something else is done', () => {
    const back = undone(noted(emptyHistory, a, 'ambient'), b)!;
    expect(redone(noted(back.history, a, 'laps'), c)).toBeNull();
  });

  it('has nothing to undo at the start', () => {
    expect(undone(emptyHistory, a)).toBeNull();
    expect(redone(emptyHistory, a)).toBeNull();
  });

  it('keeps 200 steps', () => {
    let history = emptyHistory;
    for (let i = 0; i < 300; i++) history = settled(noted(history, a, String(i)));
    expect(history.past).toHaveLength(200);
  });
});
