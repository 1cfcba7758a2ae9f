/** What crosses the worker's door. Failures are values: an Error would lose its fields on the way. */
import type { BlankingMap } from '../advise/blankings.ts';
import type { ConditionsMap, MapAsked } from '../advise/conditions-map.ts';
import type { CornerSensitivity, Sample, Spread } from '../advise/doubt.ts';
import type { Plan, PlanAsked } from '../advise/plan.ts';
import type { Ask, Outcome } from '../advise/search.ts';
import type { ForecastAsked, SessionForecast } from '../advise/session-forecast.ts';
import type { SafeSpan } from '../advise/span.ts';
import type { Weighing } from '../advise/weighed.ts';
import type { TraceChoices, TraceReading } from '../circuit/understood.ts';
import type { CutRequest, CutSheets } from '../cut/cut-sheets.ts';
import type { ByHand } from '../report/by-hand/by-hand.ts';
import type { Scenario } from '../scenario/schema.ts';
import type { CornerResult, StintResult } from '../stint/result.ts';

export interface RunRequest {
  /** Number of the request; the reply carries it back. */
  id: number;
  /** Checked by whoever asks. */
  scenario: Scenario;
  /** The scenario whose speed and heat are kept when stint.hold_trace is true; null: its own. */
  driven: Scenario | null;
}

export type HandRequest = Pick<RunRequest, 'scenario' | 'driven'>;

export type RunReply =
  | { id: number; kind: 'result'; result: StintResult; elapsed_ms: number }
  | { id: number; kind: 'failure'; message: string };

/** What can be searched for, and what is then found. */
export interface Findings {
  spans: SafeSpan[];
  blankings: BlankingMap[];
  spread: Spread;
  /** The spans once more, with what the draws propose. */
  weighed: SafeSpan[];
  sensitivity: CornerSensitivity[];
  conditions: ConditionsMap;
  /** Of a scenario that `planGround` has prepared. */
  plan: Plan;
  session: SessionForecast;
}

export type Sought = keyof Findings;

export interface Question<What extends Sought = Sought> extends Pick<RunRequest, 'scenario' | 'driven'> {
  sought: What;
  /** Of the draws, where those are asked for. */
  sample: What extends 'spread'
    ? Sample
    : What extends 'weighed'
      ? Weighing
      : What extends 'session'
        ? ForecastAsked
        : null;
  /** Of the axes, where a map of conditions is asked for; of the event, where its plan is. */
  map?: What extends 'conditions' ? MapAsked : never;
  event?: What extends 'plan' ? PlanAsked : never;
}

export interface Failure {
  kind: 'failure';
  message: string;
}

/** A search asks for runs, which whoever drives it brings, or it is at its end. */
export type Step =
  { kind: 'asks'; asks: readonly Ask[] } | { kind: 'found'; found: Findings[Sought] } | Failure;

/** What came of one run, corner by corner; "left" where its search was forgotten meanwhile. */
export type Answer = { kind: 'outcomes'; outcomes: Outcome[] } | { kind: 'left' } | Failure;

/** The main numbers of a corner followed by hand, and where its run used the laws. */
export interface CornerByHand extends Pick<CornerResult, 'axle' | 'side' | 'ranges'> {
  byHand: ByHand | null;
}

/** With how many values of the scenario are judgement, of which the draws are made. */
export type ByHandReply = { kind: 'by hand'; corners: CornerByHand[]; judged: number } | Failure;

export type CutReply = CutSheets | Failure;

/** A file or blob: what is needed of it, and what crosses the door without being read first. */
export interface TraceBytes {
  readonly size: number;
  arrayBuffer(): Promise<ArrayBuffer>;
}

export interface EngineDoor {
  run(request: RunRequest): Promise<RunReply>;
  /** Runs the stint once more and follows the main numbers of every corner by hand. */
  followByHand(request: HandRequest): Promise<ByHandReply>;
  /** Draws panels to be cut, as texts of files. */
  drawCut(request: CutRequest): Promise<CutReply>;
  /** What a search of this number is about: told to a worker before anything else of it. */
  learn(search: number, question: Question): Promise<void>;
  /** Begins a search, or goes on with what came of the runs it asked for; always in the worker that began it. */
  advance(search: number, outcomes: readonly Outcome[][]): Promise<Step>;
  /** One of its runs, in any worker that has learnt of it. Rests after every corner. */
  answer(search: number, ask: Ask): Promise<Answer>;
  /** The search is over or not wanted any more: what is under way ends at its next rest. */
  forget(search: number): Promise<void>;
}

/** The door of the worker that reads files. */
export interface ReaderDoor {
  /** Reads a logger's file into columns, or says what is wrong with it. Nothing is asked back: terminating ends it. */
  readTrace(
    file: TraceBytes,
    choices: TraceChoices,
    progress: (share: number) => void,
  ): Promise<TraceReading>;
}
