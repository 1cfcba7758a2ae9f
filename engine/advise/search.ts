/** A search asks for runs and is told what came of them; whoever drives it runs them here, or in as many workers as it likes. */
import type { Changes } from '../scenario/changes.ts';
import type { Scenario } from '../scenario/schema.ts';
import type { CompileOptions } from '../stint/compile.ts';
import type { JudgedLap } from '../stint/judge.ts';
import type { Axle, CornerResult } from '../stint/result.ts';
import type { Sensed } from './sensed.ts';

/** What all runs of a search start from. */
export interface Ground extends CompileOptions {
  scenario: Scenario;
}

/** Which corners are looked at; all of an axle or of the car where nothing narrower is named. */
export interface At {
  axle?: Axle;
  /** Sides that have become equal are one corner for both. */
  side?: CornerResult['side'];
  /** How its mouth is blanked from the start; else as it is. */
  blanking_pct?: number;
}

/** One run: the ground with something changed, and what of it is looked at. */
export interface Ask {
  /** Values at dotted keys, which have been checked. */
  changes?: Changes;
  /** Doubted values by their keys, as they would be. */
  values?: Readonly<Record<string, number>>;
  /** Lag of a sensor whose reading is wanted, too [s] */
  lag_s?: number;
  /** One after another, each with its outcomes; all corners as they are where nothing is named. */
  at?: readonly At[];
}

/** Of a corner's run, what searches read: little, for it crosses from worker to worker. */
export interface Outcome extends Pick<CornerResult, 'axle' | 'side' | 'window' | 'verdict'> {
  laps: JudgedLap[];
  /** Where a sensor's lag was given. */
  sensed?: Sensed;
}

/** Asks for runs, all at once that need not wait for each other, and goes on when each has given its corners, in that order. */
export type Steps<T> = Generator<readonly Ask[], T, readonly Outcome[][]>;

export interface Search<T> {
  ground: Ground;
  steps: Steps<T>;
}

/** Several searches side by side: what each asks for is asked at once, and what two of them ask for only once. */
export function* together<T>(all: readonly Steps<T>[]): Steps<T[]> {
  const at = all.map((steps) => steps.next());
  for (;;) {
    const lists = at.map((step) => (step.done ? [] : step.value));
    const asks = [...new Set(lists.flat())];
    if (asks.length === 0) return at.map(({ value }) => value as T);
    const answers = yield asks;
    const answerTo = new Map(asks.map((ask, i) => [ask, answers[i]!]));
    for (const [i, list] of lists.entries())
      if (!at[i]!.done) at[i] = all[i]!.next(list.map((ask) => answerTo.get(ask)!));
  }
}
