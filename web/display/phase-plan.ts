/** The phases of a stint laid out over its laps, each with what held before it and what it changes. Pure. */
import type { Phase, Scenario, Value } from '../../engine/index.ts';
import { valueAt } from '../../engine/scenario/tree.ts';
import { driverChanges, drivers } from '../../engine/scenario/drivers.ts';
import { withChanges } from '../../engine/scenario/changes.ts';
import { withSides } from '../../engine/scenario/phase-set.ts';

type StandPhase = Extract<Phase, { kind: 'stand' }>;

/** The phases and the laps of the stint that they must add up to. */
export type PhaseList = Pick<Scenario['stint'], 'phases' | 'laps'>;

/** One thing a phase changes from there on; a driver's keys are one thing, with the driver's name as value. */
export interface Change {
  key: string;
  /** Null also where a phase gives an axle one blanking and one of its sides another. */
  from: Value;
  to: Value;
  /** What the sides of an axle had, where they differed. */
  fromSides?: { left: number; right: number };
}

export interface PlannedPhase {
  index: number;
  phase: Phase;
  /** Driven laps, 0 for a standing car. */
  laps: number;
  /** Laps that are driven before it. */
  after: number;
  /** The scenario as it holds before and from this phase on. */
  before: Scenario;
  now: Scenario;
  changes: Change[];
}

export type PhasePlan = readonly PlannedPhase[];

export const isStand = (phase: Phase): phase is StandPhase => phase.kind === 'stand';

/** Laps that the phases name themselves, without the one that takes what the stint leaves. */
export const fixedLaps = (phases: readonly Phase[]): number =>
  phases.reduce((sum, phase) => sum + (isStand(phase) ? 0 : (phase.laps ?? 0)), 0);

/** Laps of one phase; none for a standing car. */
export function lapsOf({ phases, laps }: PhaseList, at: number): number {
  const phase = phases[at];
  if (!phase || isStand(phase)) return 0;
  return phase.laps ?? Math.max(0, laps - fixedLaps(phases));
}

export function phasePlan(scenario: Scenario): PhasePlan {
  let [before, after] = [scenario, 0];
  return scenario.stint.phases.map((phase, index) => {
    const now = withChanges(before, withSides(before, phase.set ?? {}));
    const laps = lapsOf(scenario.stint, index);
    const planned = {
      index,
      phase,
      laps,
      after,
      before,
      now,
      changes: changesOf(phase, before, now, scenario),
    };
    [before, after] = [now, after + laps];
    return planned;
  });
}

/** What is set to what holds already is no change; fuel is, for some of it has burnt. */
function changesOf(phase: Phase, before: Scenario, now: Scenario, start: Scenario): Change[] {
  const keys = Object.keys(phase.set ?? {}).map((key) => (key.startsWith('driver.') ? 'driver' : key));
  return [...new Set(keys)]
    .map((key) => ({ key, to: valueOf(key, now, start), ...fromOf(key, phase, before, start) }))
    .filter(
      ({ key, from, fromSides, to }) =>
        from !== to || fromSides || key === 'car.fuel_kg' || (key === 'driver' && to === null),
    );
}

function fromOf(key: string, phase: Phase, before: Scenario, start: Scenario): Omit<Change, 'key' | 'to'> {
  const sides = SIDES.map((side) => `${key}_${side}`);
  if (!/^blanking_pct\.(front|rear)$/.test(key)) return { from: valueOf(key, before, start) };
  if (sides.some((side) => phase.set?.[side] !== undefined)) return { from: null };
  const [left = 0, right = 0] = sides.map((side) => Number(valueOf(side, before, start)));
  return left === right ? { from: left } : { from: null, fromSides: { left, right } };
}

const SIDES = ['left', 'right'];

function valueOf(key: string, at: Scenario, start: Scenario): Value {
  if (key === 'driver') return driverId(at, start);
  return (valueAt(at, key) ?? valueAt(at, axleOf(key)) ?? null) as Value;
}

/** A side without a blanking of its own has its axle's. */
const axleOf = (key: string): string => key.replace(/_(left|right)$/, '');

/** Which driver of the library is at the wheel in a scenario; `start` tells whose car it is. Null: another one. */
export function driverId(at: Scenario, start: Scenario): string | null {
  const isAtWheel = (id: string): boolean =>
    Object.entries(driverChanges(id, start)).every(([key, value]) => valueAt(at, key) === value);
  return drivers.find(({ id }) => isAtWheel(id))?.id ?? null;
}

/** Gap to the car ahead in a phase: its own where it names one, else the stint's. Null in clear air or standing. */
export function gapOf({ phase, now }: PlannedPhase): { gap_m: number | null; gap_s: number | null } | null {
  if (isStand(phase)) return null;
  const { gap_m = null, gap_s = null } = namesGap(phase) ? phase : now.traffic;
  return gap_m === null && gap_s === null ? null : { gap_m, gap_s };
}

export const namesGap = (phase: Phase): boolean =>
  !isStand(phase) && (phase.gap_m !== undefined || phase.gap_s !== undefined);
