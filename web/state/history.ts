/** Undo and redo as a list of scenarios with the name of the step that left each. One drag is one step. */
import type { Scenario } from '../../engine/index.ts';

interface Step {
  name: string;
  scenario: Scenario;
}

export interface History {
  past: readonly Step[];
  future: readonly Step[];
  /** Name of the gesture under way: further changes under it belong to the same step. */
  gesture: string | null;
}

const DEPTH = 200;

export const emptyHistory: History = { past: [], future: [], gesture: null };

/** Notes that `scenario` is about to be left by a step of this name. */
export function noted(history: History, scenario: Scenario, name: string): History {
  if (history.gesture === name) return history;
  return { past: [...history.past, { name, scenario }].slice(-DEPTH), future: [], gesture: name };
}

/** The hand has let go: the next change is a step of its own. */
export const settled = (history: History): History => ({ ...history, gesture: null });

export function undone(history: History, now: Scenario): { history: History; scenario: Scenario } | null {
  const step = history.past.at(-1);
  if (!step) return null;
  return {
    scenario: step.scenario,
    history: {
      past: history.past.slice(0, -1),
      future: [...history.future, { name: step.name, scenario: now }],
      gesture: null,
    },
  };
}

export function redone(history: History, now: Scenario): { history: History; scenario: Scenario } | null {
  const step = history.future.at(-1);
  if (!step) return null;
  return {
    scenario: step.scenario,
    history: {
      past: [...history.past, { name: step.name, scenario: now }],
      future: history.future.slice(0, -1),
      gesture: null,
    },
  };
}
