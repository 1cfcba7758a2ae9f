/** Undo and redo as a list of what was there before each step, with the step's name. One drag is one step. */

export interface Step<State> {
  name: string;
  /** Dotted key of the one value that the step changes; null where it changes more or none. */
  key: string | null;
  state: State;
}

export interface History<State> {
  past: readonly Step<State>[];
  future: readonly Step<State>[];
  /** Name of the gesture under way: further changes under it belong to the same step. */
  gesture: string | null;
}

const DEPTH = 200;

export const emptyHistory: History<never> = { past: [], future: [], gesture: null };

/** Notes that `state` is about to be left by a step of this name. */
export function noted<State>(
  history: History<State>,
  state: State,
  name: string,
  key: string | null = null,
): History<State> {
  if (history.gesture === name) return history;
  return { past: [...history.past, { name, key, state }].slice(-DEPTH), future: [], gesture: name };
}

/** The hand has let go: the next change is a step of its own. */
export const settled = <State>(history: History<State>): History<State> => ({ ...history, gesture: null });

export interface Moved<State> {
  history: History<State>;
  state: State;
}

export const undone = <State>(history: History<State>, now: State): Moved<State> | null =>
  moved(history, now, 'past', 'future');

export const redone = <State>(history: History<State>, now: State): Moved<State> | null =>
  moved(history, now, 'future', 'past');

/** The last step of one list goes over to the other, with what is left by it. */
function moved<State>(
  history: History<State>,
  now: State,
  from: 'past' | 'future',
  to: 'past' | 'future',
): Moved<State> | null {
  const step = history[from].at(-1);
  if (!step) return null;
  return {
    state: step.state,
    history: {
      past: [],
      future: [],
      [from]: history[from].slice(0, -1),
      [to]: [...history[to], { ...step, state: now }],
      gesture: null,
    },
  };
}
