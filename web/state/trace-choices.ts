/** What a person said about a file, one change at a time. Pure. */
import type { TraceChoices, TraceRole, UnderstoodTrace } from '../../engine/index.ts';

function without(choices: TraceChoices, ...keys: (keyof TraceChoices)[]): TraceChoices {
  return Object.fromEntries(
    Object.entries(choices).filter(([key]) => !keys.includes(key as keyof TraceChoices)),
  );
}

/**
 * Choices with a change. Other cells make other columns: what was said of the old ones goes. A lap is an index into
 * laps: other laps let it go.
 */
export function changed(choices: TraceChoices, change: TraceChoices): TraceChoices {
  const isRecut = change.delimiter !== undefined && change.delimiter !== choices.delimiter;
  const kept = isRecut ? without(choices, 'roles', 'units') : choices;
  const areLapsOthers = isRecut || Object.keys(change).some((key) => key !== 'lap' && key !== 'units');
  return {
    ...(areLapsOthers ? without(kept, 'lap') : kept),
    ...change,
    ...(change.units ? { units: { ...kept.units, ...change.units } } : {}),
  };
}

/** Times asked for and none given yet: the file begins with a lap. */
export const complete = (choices: TraceChoices): TraceChoices =>
  choices.lapsBy === 'times' ? { lapStarts_s: [0], ...choices } : choices;

/** The role of a column as it was chosen, or else as it was understood. */
export const roleOf = (
  understood: UnderstoodTrace,
  choices: TraceChoices,
  index: number,
): TraceRole | null =>
  choices.roles?.[index] === undefined ? (understood.columns[index]?.role ?? null) : choices.roles[index];

/**
 * One column gets a role. All others keep theirs, so that nothing jumps, but a column that had the role gives it up.
 * A unit said for another role means nothing now.
 */
export function withRole(
  understood: UnderstoodTrace,
  choices: TraceChoices,
  index: number,
  role: TraceRole | null,
): TraceChoices {
  const roles = understood.columns.map((_, i) => {
    const now = roleOf(understood, choices, i);
    return i === index ? role : role !== null && now === role ? null : now;
  });
  const units = Object.entries(choices.units ?? {}).filter(
    ([i]) => roles[Number(i)] === roleOf(understood, choices, Number(i)),
  );
  return { ...without(choices, 'lap', 'units'), roles, units: Object.fromEntries(units) };
}

/** What holds for the next file with this header too: not which lap, and not the times of its laps. */
export const lasting = (choices: TraceChoices): TraceChoices => without(choices, 'lap', 'lapStarts_s');

/** Whether anything was said at all. */
export const isCorrected = (choices: TraceChoices): boolean =>
  Object.values(choices).some((said) => typeof said !== 'object' || Object.keys(said).length > 0);
