/** The browser's door: runs stints in a worker, off the page's thread. */
import { expose, transfer } from 'comlink';
import type { TraceChoices, TraceReading } from '../circuit/understood.ts';
import { tooLarge } from '../scenario/file-size.ts';
import { checkScenario } from '../scenario/parse.ts';
import { compile } from '../stint/compile.ts';
import type { StintResult } from '../stint/result.ts';
import { run } from '../stint/run.ts';
import { readTrace } from '../trace-file/read-trace.ts';
import { decodeText } from './decode-text.ts';
import type { EngineDoor, RunReply, RunRequest, TraceBytes } from './protocol.ts';

const door: EngineDoor = {
  run: (request) => Promise.resolve(reply(request)),
  readTrace: traceFrom,
};

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
