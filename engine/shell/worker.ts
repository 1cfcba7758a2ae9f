/** The browser's door: runs stints in a worker, off the page's thread. */
import { expose, transfer } from 'comlink';
import type { TraceChoices, TraceReading } from '../circuit/understood.ts';
import { tooLarge } from '../scenario/file-size.ts';
import { safeSpans } from '../advise/safe-span.ts';
import { checkScenario } from '../scenario/parse.ts';
import { problemLine } from '../scenario/problem.ts';
import { compile } from '../stint/compile.ts';
import type { StintResult } from '../stint/result.ts';
import { run } from '../stint/run.ts';
import { readTrace } from '../trace-file/read-trace.ts';
import { decodeText } from './decode-text.ts';
import type { EngineDoor, RunReply, RunRequest, SpanReply, SpanRequest, TraceBytes } from './protocol.ts';

const door: EngineDoor = {
  run: (request) => Promise.resolve(reply(request)),
  findSpans: spansFor,
  leaveSpans: () => void (latestSearch += 1),
  readTrace: traceFrom,
};

let latestSearch = 0;

async function spansFor({ scenario, driven }: SpanRequest): Promise<SpanReply> {
  const mine = ++latestSearch;
  const checked = checkScenario(scenario);
  if (!checked.ok) return { kind: 'failure', message: checked.problems.map(problemLine).join('; ') };
  try {
    const search = safeSpans(checked.scenario, { driven });
    for (let step = search.next(); ; step = search.next()) {
      if (step.done) return { kind: 'spans', spans: step.value };
      await breath();
      if (mine !== latestSearch) return { kind: 'left' };
    }
  } catch (error) {
    return { kind: 'failure', message: error instanceof Error ? error.message : String(error) };
  }
}

/** Lets the messages that wait be heard. A timer would add milliseconds to every run. */
function breath(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

function reply({ id, scenario, driven }: RunRequest): RunReply {
  const start_ms = performance.now();
  const checked = checkScenario(scenario);
  if (!checked.ok) return { id, kind: 'problems', problems: checked.problems };
  try {
    const result = run(compile(checked.scenario, { driven }));
    const answer: RunReply = { id, kind: 'result', result, elapsed_ms: performance.now() - start_ms };
    return transfer(answer, buffersOf(result));
  } catch (error) {
    return { id, kind: 'failure', message: error instanceof Error ? error.message : String(error) };
  }
}

/** Every buffer of a result: moved to the page, not copied. */
function buffersOf({ clock, corners, track }: StintResult): ArrayBuffer[] {
  const columns: object[] = [clock, ...corners.map((corner) => corner.columns ?? {}), track.outline ?? {}];
  return columns.flatMap((group) =>
    Object.values(group).map((column: Float64Array) => column.buffer as ArrayBuffer),
  );
}

async function traceFrom(
  file: TraceBytes,
  choices: TraceChoices,
  progress: (share: number) => void,
): Promise<TraceReading> {
  const problem = tooLarge(file.size);
  const decoded = problem ? { problem } : decodeText(await file.arrayBuffer());
  if (!('text' in decoded)) return { problems: [decoded.problem], understood: null, columns: null };
  const reading = readTrace(decoded.text, choices, progress);
  return transfer(reading, columnsOf(reading));
}

/** Columns and thumbnails of a reading: moved to the page, not copied. */
function columnsOf({ columns, understood }: TraceReading): ArrayBuffer[] {
  const thumbnails = understood?.columns.map(({ thumbnail }) => thumbnail) ?? [];
  const all = [...(Object.values(columns ?? {}) as Float64Array[]), ...thumbnails];
  return all.map((column) => column.buffer as ArrayBuffer);
}

expose(door);
