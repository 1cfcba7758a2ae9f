/** The engine's surface. The page takes types from here and values from ./scenario only; physics runs in ./shell. */
export type * from './stint/result.ts';
export type { AxlePlan, Missed, PlannedPanel, Uncovered } from './advise/axle-plan.ts';
export type { BlankedLap, BlankingMap, BlankingRow } from './advise/blankings.ts';
export type * from './advise/conditions-map.ts';
export type * from './advise/doubt.ts';
export type { LikelyCondition } from './advise/likely-conditions.ts';
export type { MarginDoubt } from './advise/margin-doubt.ts';
export type { Plan, PlanAsked } from './advise/plan.ts';
export type { Regret } from './advise/regret.ts';
export type { RuleCase, RuleLine } from './advise/rule-lines.ts';
export type { CornerReading, SessionForecast } from './advise/session-forecast.ts';
export type { SessionFit, SessionPlan } from './advise/session-plan.ts';
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
