/** The engine's surface. The page takes types from here and values from ./scenario only; physics runs in ./shell. */
export type * from './stint/result.ts';
export type { BlankedLap, BlankingMap, BlankingRow } from './advise/blankings.ts';
export type * from './advise/doubt.ts';
export type * from './advise/span.ts';
export type { Weighing } from './advise/weighed.ts';
export type { Scenario, Brake, Duct, Circuit, Phase } from './scenario/schema.ts';
export type { Quantity, Said } from './said.ts';
export type { Problem } from './scenario/problem.ts';
export type { Changes, Value } from './scenario/override.ts';
export type * from './report/by-hand/by-hand.ts';
export type * from './report/by-hand/hand-line.ts';
export type { Ask, Outcome } from './advise/search.ts';
export type {
  Answer,
  ByHandReply,
  CornerByHand,
  CutReply,
  EngineDoor,
  Failure,
  Findings,
  Question,
  ReaderDoor,
  RunReply,
  RunRequest,
  Sought,
  Step,
  TraceBytes,
} from './shell/protocol.ts';
export type * from './circuit/understood.ts';
export type { TraceColumns } from './circuit/trace.ts';
export type { CutRequest, CutSheets, PanelFacts, SheetTexts } from './cut/cut-sheets.ts';
