/** What the keys do, for a person to read. The keys themselves are said by the controls they press (`keys.svelte.ts`). */

export interface Shortcut {
  /** Any of them. */
  keys: readonly string[];
  does: string;
}

/** Single letters and digits: a person may switch them off. */
export const SINGLE: readonly Shortcut[] = [
  { keys: ['F', 'R'], does: 'Take hold of the front or the rear blanking; arrows then move it' },
  { keys: ['A'], does: 'The other axle in the chart' },
  { keys: ['P'], does: 'Pin this run' },
  { keys: ['S'], does: 'Start or stop playing' },
  { keys: ['1', '2', '3', '4'], does: 'Moment, lap, stint, all blankings' },
  { keys: ['5', '6', '7', '8', '9'], does: 'Chart, table, ledger, phases, how sure' },
  { keys: ['?'], does: 'This list' },
];

export const COMMANDS: readonly Shortcut[] = [
  { keys: ['Ctrl Z'], does: 'Undo' },
  { keys: ['Ctrl Shift Z', 'Ctrl Y'], does: 'Redo' },
  { keys: ['Ctrl S'], does: 'Save the sheet as a file' },
  { keys: ['Ctrl Shift S'], does: 'Save a copy' },
  { keys: ['Ctrl O'], does: 'Open a file' },
  { keys: ['Ctrl P'], does: 'Print the run sheet' },
];

/** On a drawing, or on the bar under it, that has the focus. */
export const ON_DRAWINGS: readonly Shortcut[] = [
  { keys: ['←', '→'], does: 'One sample back or on' },
  { keys: ['Shift ←', 'Shift →'], does: 'One lap back or on; so do PgDn and PgUp' },
  { keys: ['M', 'Shift M'], does: 'The next hard stop, or the one before' },
  { keys: ['Home', 'End'], does: 'The ends of what is drawn' },
];

/** On the map of all blankings, when it has the focus. */
export const ON_MAP: readonly Shortcut[] = [
  { keys: ['←', '→'], does: 'The lap before or after' },
  { keys: ['↑', '↓'], does: '5 % more or less blanked; 1 % with Shift' },
  { keys: ['Home', 'End'], does: 'The first or the last lap' },
  { keys: ['Enter'], does: 'Fit that blanking and go to that lap' },
  { keys: ['Esc'], does: 'Back to what is fitted' },
];

/** On a value that has the focus. */
export const ON_VALUES: readonly Shortcut[] = [
  { keys: ['←', '→'], does: 'On its slider: one step less or more' },
  { keys: ['PgDn', 'PgUp'], does: 'On its slider: a larger step' },
  { keys: ['Home', 'End'], does: 'On its slider: the least or the most' },
  { keys: ['↑', '↓'], does: 'Where it is typed: one step more or less' },
  { keys: ['Enter'], does: 'Where it is typed: take it' },
  { keys: ['Esc'], does: 'Where it is typed: back to what it was' },
];
