/** The browser's door: runs stints in a worker, off the page's thread. */
import { expose, transfer } from 'comlink';
import { safeSpans } from '../advise/safe-span.ts';
import { checkScenario } from '../scenario/parse.ts';
import { problemLine } from '../scenario/problem.ts';
import { compile } from '../stint/compile.ts';
import type { StintResult } from '../stint/result.ts';
import { run } from '../stint/run.ts';
import type { EngineDoor, RunReply, RunRequest, SpanReply, SpanRequest } from './protocol.ts';

const door: EngineDoor = {
  run: (request) => Promise.resolve(reply(request)),
  findSpans: spansFor,
  leaveSpans: () => void (latestSearch += 1),
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

expose(door);
