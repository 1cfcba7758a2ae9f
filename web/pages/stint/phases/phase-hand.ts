import type { Problem, Value } from '../../../../engine/index.ts';
import { withFields, withLaps, withSet, type Edit } from '../../../state/phase-edits.ts';
import type { Session } from '../../../state/session.svelte.ts';

type Changes = Record<string, Value | undefined>;

/** What the fields of one phase do to the stint. Each answers with what was expected if it is refused, else nothing. */
export interface PhaseHand {
  laps(laps: number | null): string;
  fields(fields: Changes, what: string): string;
  set(changes: Changes, what: string): string;
  settle(): void;
}

export function phaseHand(session: Session, at: number): PhaseHand {
  const named = (what: string): string => `phase ${at + 1} ${what}`;
  const stint = () => session.scenario.stint;
  return {
    laps: (laps) => refusedBy(session.changePhases(withLaps(stint(), at, laps), named('laps'))),
    fields: (fields, what) => refusedBy(session.changePhases(withFields(stint(), at, fields), named(what))),
    set: (changes, what) => refusedBy(session.changePhases(withSet(stint(), at, changes), named(what))),
    settle: () => session.settle(),
  };
}

/** The first problem in words that fit behind "Expected", a phase's own before the stint's; empty without one. */
export function refusedBy(problems: readonly Problem[]): string {
  const problem = problems.find(({ key }) => key !== 'stint.laps') ?? problems[0];
  if (!problem) return '';
  return problem.key === 'stint.laps' ? `${problem.expected}, in the whole stint` : problem.expected;
}

/** Why an edit of the list was not taken, as a sentence of its own. */
export const notDone = (expected: string, { list }: Edit): string =>
  list.laps < 1
    ? 'A stint needs at least one driven lap.'
    : `Not done: expected ${expected}. Nothing has changed.`;
