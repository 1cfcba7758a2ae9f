/** From what was asked for to the object that `--json` prints. Throws what is wrong with the asking. */
import type { Sample } from '../advise/doubt.ts';
import { finished } from '../advise/finished.ts';
import { safeSpans } from '../advise/safe-span.ts';
import { sensitivity } from '../advise/sensitivity.ts';
import type { SafeSpan } from '../advise/span.ts';
import { spread } from '../advise/spread.ts';
import { weighed } from '../advise/weighed.ts';
import {
  measureFirstRecord,
  spreadRecord,
  type MeasureFirstRecord,
  type SpreadRecord,
} from '../report/doubt-record.ts';
import { summarise, type NoticeRecord, type StintRecord } from '../report/summary.ts';
import { panelProblems } from '../scenario/blank-rules.ts';
import { isCalibrated } from '../scenario/calibrated.ts';
import { override, unknownKeys, type Changes } from '../scenario/override.ts';
import { problemLine } from '../scenario/problem.ts';
import type { Scenario } from '../scenario/schema.ts';
import { compile } from '../stint/compile.ts';
import { run } from '../stint/run.ts';
import { accepted, baseOf } from './base.ts';
import type { Job } from './job.ts';
import { Refused } from './refused.ts';

/** What `--spread` adds. */
interface Doubt {
  spread: SpreadRecord;
  measureFirst: MeasureFirstRecord[];
}

export type JobRecord = StintRecord & Partial<Doubt>;

export function recordOf(job: Job): JobRecord {
  const { base, said, scenario, model } = prepared(job);
  const spans = job.span ? spansOf(scenario, job.spread, base) : [];
  const record = summarise(run(model, 'summary'), spans);
  const isSaid = ({ text }: NoticeRecord): boolean => said.some((notice) => notice.text === text);
  const unfit = panelProblems(scenario).map((each) => ({ kind: 'panels', text: problemLine(each) }));
  record.notices = [...said, ...record.notices.filter((notice) => !isSaid(notice)), ...unfit];
  return { ...record, ...(job.spread && doubtOf(scenario, job.spread, base)) };
}

/** The stint as it will be run, with the scenario that it was changed from. */
export function prepared(job: Job) {
  const { scenario: base, said } = baseOf(job);
  const scenario = changed(base, job.set);
  return { base, said, scenario, model: compile(scenario, { driven: base }) };
}

/** What can be set is, so that the problems with unknown keys and with values come together. */
function changed(base: Scenario, changes: Changes): Scenario {
  const unknown = unknownKeys(changes);
  const known = Object.entries(changes).filter(([key]) => !unknown.some((p) => p.key === key));
  const result = override(base, Object.fromEntries(known));
  if (unknown.length > 0) throw new Refused([...unknown, ...(result.ok ? [] : result.problems)]);
  return accepted(result);
}

/** With what the draws propose, where those are asked for. */
function spansOf(scenario: Scenario, sample: Sample | undefined, driven: Scenario): SafeSpan[] {
  const spans = finished(safeSpans(scenario, { driven }));
  return sample ? finished(weighed(scenario, { ...sample, spans }, { driven })) : spans;
}

/** The spread of the answer and what to measure first. */
const doubtOf = (scenario: Scenario, sample: Sample, driven: Scenario): Doubt => ({
  spread: spreadRecord(finished(spread(scenario, sample, { driven })), isCalibrated(scenario)),
  measureFirst: measureFirstRecord(finished(sensitivity(scenario, { driven }))),
});
