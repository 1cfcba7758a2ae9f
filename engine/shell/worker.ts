/** The browser's door: runs stints in a worker, off the page's thread. */
import { expose, transfer } from 'comlink';
import { readTrace } from '../circuit/read-trace.ts';
import { checkScenario } from '../scenario/parse.ts';
import { compile } from '../stint/compile.ts';
import type { StintResult } from '../stint/result.ts';
import { run } from '../stint/run.ts';
import type { EngineDoor, RunReply, RunRequest } from './protocol.ts';

const door: EngineDoor = {
  run: (request) => Promise.resolve(reply(request)),
  readTrace: (text) => Promise.resolve(readTrace(text)),
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

expose(door);
