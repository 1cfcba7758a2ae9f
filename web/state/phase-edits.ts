/** Changes to a stint's list of phases. Pure: each gives a new list, with the laps of the stint fitting it. */
import type { Phase, Value } from '../../engine/index.ts';
import { fixedLaps, isStand, lapsOf, type PhaseList } from '../display/phase-plan.ts';

/** An edit, and the place of the phase to look at afterwards. */
export interface Edit {
  list: PhaseList;
  at: number;
}

export type NewPhase = Phase['kind'] | 'pit';

const PIT_STOP_S = 45;
/** Laps of a new phase [-] */
const NEW_LAPS = { out: 1, push: 5, safety: 3, in: 1 };

const isOpen = (phase: Phase): boolean => !isStand(phase) && phase.laps === null;

/** A phase of a kind put in after a place; a pit stop is an in-lap, the stop and an out-lap. */
export function added(list: PhaseList, after: number, kind: NewPhase): Edit {
  const fresh = kind === 'pit' ? [newPhase('in'), newPhase('stand'), newPhase('out')] : [newPhase(kind)];
  const phases = list.phases.toSpliced(after + 1, 0, ...fresh);
  return { list: fitted(list, phases), at: after + (kind === 'pit' ? 2 : 1) };
}

export function removed(list: PhaseList, at: number): Edit {
  const phases = list.phases.toSpliced(at, 1);
  return { list: fitted(list, phases), at: Math.min(at, phases.length - 1) };
}

/** One place earlier or later; at either end nothing changes. */
export function moved(list: PhaseList, at: number, by: 1 | -1): Edit {
  const phase = list.phases[at];
  if (!phase || !list.phases[at + by]) return { list, at };
  return {
    list: { ...list, phases: list.phases.toSpliced(at, 1).toSpliced(at + by, 0, phase) },
    at: at + by,
  };
}

/** Two phases of half the laps each; what the first sets holds in the second. One lap stays whole. */
export function split(list: PhaseList, at: number): Edit {
  const phase = list.phases[at];
  const laps = lapsOf(list, at);
  if (!phase || isStand(phase) || laps < 2) return { list, at };
  const { set: _, ...rest } = phase;
  const first = Math.ceil(laps / 2);
  const second = { ...rest, laps: phase.laps === null ? null : laps - first };
  return {
    list: { ...list, phases: list.phases.toSpliced(at, 1, { ...phase, laps: first }, second) },
    at: at + 1,
  };
}

/** Laps that an open phase keeps when they are fixed: those it has, or one where none is left for it. */
const keptLaps = (list: PhaseList, at: number): number => Math.max(1, lapsOf(list, at));

/** The same once more behind it; of an open phase the copy drives as many laps as it does now. */
export function duplicated(list: PhaseList, at: number): Edit {
  const phase = list.phases[at];
  if (!phase) return { list, at };
  const copy = isStand(phase) ? phase : { ...phase, laps: keptLaps(list, at) };
  const phases = list.phases.toSpliced(at + 1, 0, copy);
  const more = isOpen(phase) ? keptLaps(list, at) : 0;
  return { list: fitted({ ...list, laps: list.laps + more }, phases), at: at + 1 };
}

/** Laps of a phase; null takes what the stint leaves, and whoever did so until now keeps the laps it has. */
export function withLaps(list: PhaseList, at: number, laps: number | null): PhaseList {
  const phases = list.phases.map((phase, i): Phase => {
    if (i === at && !isStand(phase)) return { ...phase, laps };
    return laps === null && isOpen(phase) ? { ...phase, laps: keptLaps(list, i) } : phase;
  });
  return fitted(list, phases);
}

/** A phase with some of its own fields changed; undefined takes a field away. */
export function withFields(
  list: PhaseList,
  at: number,
  fields: Record<string, Value | undefined>,
): PhaseList {
  return edited(list, at, (phase) => changed(phase, fields) as Phase);
}

/** A phase with some keys of what it sets changed; undefined leaves a key as it was before the phase. */
export function withSet(list: PhaseList, at: number, changes: Record<string, Value | undefined>): PhaseList {
  return edited(list, at, (phase) => {
    const set = changed(phase.set ?? {}, changes);
    const { set: _, ...rest } = phase;
    return Object.keys(set).length > 0 ? { ...rest, set } : rest;
  });
}

function changed(from: object, changes: Record<string, Value | undefined>): object {
  return Object.fromEntries(
    Object.entries({ ...from, ...changes }).filter(([, value]) => value !== undefined),
  );
}

function edited(list: PhaseList, at: number, edit: (phase: Phase) => Phase): PhaseList {
  return { ...list, phases: list.phases.map((phase, i) => (i === at ? edit(phase) : phase)) };
}

function newPhase(kind: Phase['kind']): Phase {
  return kind === 'stand'
    ? { kind, duration_s: PIT_STOP_S, brake_held: false }
    : { kind, laps: NEW_LAPS[kind] };
}

/** The laps of the stint that fit new phases: their sum, or as many as before but one at least for the open phase. */
function fitted({ laps, phases: before }: PhaseList, phases: Phase[]): PhaseList {
  const fixed = fixedLaps(phases);
  if (!phases.some(isOpen)) return { phases, laps: fixed };
  const isAsBefore = fixed === fixedLaps(before) && before.some(isOpen);
  return { phases, laps: isAsBefore ? laps : Math.max(laps, fixed + 1) };
}
