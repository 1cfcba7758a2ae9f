/** What crosses the worker's door. Problems and failures are values: an Error would lose its fields on the way. */
import type { CornerSensitivity, Sample, Spread } from '../advise/doubt.ts';
import type { SafeSpan } from '../advise/span.ts';
import type { TraceChoices, TraceReading } from '../circuit/understood.ts';
import type { ByHand } from '../report/by-hand/by-hand.ts';
import type { Problem } from '../scenario/problem.ts';
import type { Scenario } from '../scenario/schema.ts';
import type { CornerResult, StintResult } from '../stint/result.ts';

export interface RunRequest {
  /** Number of the request; the reply carries it back. */
  id: number;
  scenario: Scenario;
  /** The scenario whose speed and heat are kept when stint.hold_trace is true; null: its own. */
  driven: Scenario | null;
}

export type RunReply =
  | { id: number; kind: 'result'; result: StintResult; elapsed_ms: number }
  | { id: number; kind: 'problems'; problems: Problem[] }
  | { id: number; kind: 'failure'; message: string };

export type SpanRequest = Pick<RunRequest, 'scenario' | 'driven'>;

/** A search that found nothing: it made room for a later one or was left, or something broke. */
export type NotFound = { kind: 'left' } | { kind: 'failure'; message: string };

export type SpanReply = { kind: 'spans'; spans: SafeSpan[] } | NotFound;

export type SpreadRequest = SpanRequest & Sample;

export type SpreadReply = { kind: 'spread'; spread: Spread } | NotFound;

export type SensitivityReply = { kind: 'sensitivity'; corners: CornerSensitivity[] } | NotFound;

/** The main numbers of a corner followed by hand, and where its run used the laws. */
export interface CornerByHand extends Pick<CornerResult, 'axle' | 'side' | 'ranges'> {
  byHand: ByHand | null;
}

/** With how many values of the scenario are judgement, of which the draws are made. */
export type ByHandReply = { kind: 'by hand'; corners: CornerByHand[]; judged: number } | NotFound;

/** A file or blob: what is needed of it, and what crosses the door without being read first. */
export interface TraceBytes {
  readonly size: number;
  arrayBuffer(): Promise<ArrayBuffer>;
}

export interface EngineDoor {
  run(request: RunRequest): Promise<RunReply>;
  /** Searches the safe span of every corner, resting after each run so that another message can come in between. */
  findSpans(request: SpanRequest): Promise<SpanReply>;
  /** Draws all that is doubted and runs every draw; rests as the search for spans does, and makes room like it. */
  findSpread(request: SpreadRequest): Promise<SpreadReply>;
  /** Moves each doubted value alone; rests and makes room likewise. */
  findSensitivity(request: SpanRequest): Promise<SensitivityReply>;
  /** Runs the stint once more and follows the main numbers of every corner by hand. */
  followByHand(request: SpanRequest): Promise<ByHandReply>;
  /** Ends the search under way, whichever it is, at its next rest. */
  leaveSearch(): void;
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
