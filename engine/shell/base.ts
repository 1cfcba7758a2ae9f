/** What a stint starts from: a scenario, on the lap of a logger's file where one is named. */
import { readFileSync, statSync } from 'node:fs';
import type { TraceQuestion, UnderstoodTrace } from '../circuit/understood.ts';
import type { NoticeRecord } from '../report/summary.ts';
import { tooLarge } from '../scenario/file-size.ts';
import { defaultScenario } from '../scenario/library.ts';
import { checkScenario, type Parsed } from '../scenario/parse.ts';
import type { Scenario } from '../scenario/schema.ts';
import { tracePart } from '../scenario/trace-part.ts';
import { wholeScenario } from '../scenario/whole.ts';
import { memo } from '../stint/memo.ts';
import { readTrace } from '../trace-file/read-trace.ts';
import { decodeText } from './decode-text.ts';
import type { Job } from './job.ts';
import { attempt, fileProblem, Refused } from './refused.ts';

export interface Base {
  scenario: Scenario;
  /** What was changed in a file of an earlier version, and how the trace was understood. */
  said: NoticeRecord[];
}

type Named = Pick<Job, 'scenario' | 'trace'>;

/** Jobs of one batch start from the same few: the last ones are kept, and read again when their files change. */
export const baseOf: (named: Named) => Base = memo(
  4,
  ({ scenario, trace }: Named) => [scenario, stampOf(scenario), trace, stampOf(trace)],
  ({ scenario, trace }) => {
    const plain = scenarioFrom(scenario);
    return trace === undefined ? plain : withTrace(plain, trace);
  },
);

/** Tells one state of a file from the next; null where there is none to be read. */
function stampOf(file: unknown): unknown {
  const stats = typeof file === 'string' ? statSync(file, { throwIfNoEntry: false }) : undefined;
  return stats ? [stats.ino, stats.size, stats.mtimeMs] : null;
}

function scenarioFrom(source: Job['scenario']): Base {
  if (source === undefined) return { scenario: defaultScenario(), said: [] };
  const json = typeof source === 'string' ? jsonFrom(source, 'scenario') : source;
  const name = typeof source === 'string' ? source : 'inline';
  const whole = wholeScenario(json, name);
  if (!whole.ok) throw new Refused(whole.problems);
  const said = whole.changed.map((text) => ({ kind: 'file', text: `file: ${text}` }));
  return { scenario: whole.scenario, said };
}

/** What a file of JSON holds: of a scenario or an event, as its problems call it. */
export function jsonFrom(file: string, what: string): unknown {
  const text = attempt([what, file, `${what === 'event' ? 'an' : 'a'} ${what} file that can be read`], () =>
    bytesOf(file).toString('utf8'),
  );
  return attempt([what, file, 'a file of JSON'], () => JSON.parse(text) as unknown);
}

/** A device may never end. */
function bytesOf(file: string): Buffer {
  const stats = statSync(file);
  if (stats.isCharacterDevice() || stats.isBlockDevice()) throw new Error('it is a device');
  return readFileSync(file);
}

/** The scenario on the file's lap, and how the file was understood. */
function withTrace({ scenario, said }: Base, file: string): Base {
  const bytes = attempt(['trace', file, 'a trace file that can be read'], () => {
    const cause = tooLarge(statSync(file).size);
    if (cause) throw refusedTrace(file, [cause]);
    return bytesOf(file);
  });
  const decoded = decodeText(new Uint8Array(bytes).buffer);
  if (!('text' in decoded)) throw refusedTrace(file, [decoded.problem]);
  const { columns, problems, understood } = readTrace(decoded.text);
  const question = understood?.question;
  const open = question ? [...problems, questionLine(question)] : problems;
  if (!columns) throw refusedTrace(file, open);
  return {
    scenario: accepted(checkScenario({ ...scenario, trace: tracePart(file, columns) })),
    said: understood ? [...said, ...traceSaid(understood)] : said,
  };
}

const refusedTrace = (file: string, causes: readonly string[]): Refused =>
  new Refused(causes.map((cause) => fileProblem(['trace', file, 'a trace that can be driven'], cause)));

/** Which lap, what was read as another unit, and what was left out or set right. */
const traceSaid = ({ laps, lap, columns, mended }: UnderstoodTrace): NoticeRecord[] =>
  [
    ...(lap !== null && laps.length > 1 ? [`lap ${laps[lap]!.lap}, one of ${laps.length} in the file`] : []),
    ...columns.flatMap(({ name, unitReason }) => (unitReason ? [`${name}: ${unitReason}`] : [])),
    ...mended,
  ].map((text) => ({ kind: 'trace', text: `trace: ${text}` }));

/** Nobody answers here: the file itself must say it. */
const questionLine = ({ text, answers }: TraceQuestion): string =>
  `${text} (${answers.map((answer) => answer.text).join(' or ')}) The page asks; here the file must say it`;

/** The scenario of what was parsed; throws its problems. */
export function accepted(parsed: Parsed): Scenario {
  if (!parsed.ok) throw new Refused(parsed.problems);
  return parsed.scenario;
}
