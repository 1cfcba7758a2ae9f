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
  { keys: ['Ctrl O'], does: 'Open a file' },
  { keys: ['Ctrl P'], does: 'Print the run sheet' },
];

/** On a drawing, or on the bar under it, that has the focus. */
export const ON_DRAWINGS: readonly Shortcut[] = [
  { keys: ['←', '→'], does: 'One sample back or on' },
  { keys: ['Shift ←', 'Shift →'], does: 'One lap back or on' },
  { keys: ['M', 'Shift M'], does: 'The next or the last hard stop' },
  { keys: ['Home', 'End'], does: 'The ends of what is drawn' },
];
