/** The browser's door: runs stints in a worker, off the page's thread. */
import { expose, transfer } from 'comlink';
import type { Search } from '../advise/look.ts';
import { safeSpans } from '../advise/safe-span.ts';
import { sensitivity } from '../advise/sensitivity.ts';
import { spread } from '../advise/spread.ts';
import { unknownsOf } from '../advise/unknowns.ts';
import { checkScenario } from '../scenario/parse.ts';
import { problemLine } from '../scenario/problem.ts';
import type { Scenario } from '../scenario/schema.ts';
import { compile, type CompileOptions } from '../stint/compile.ts';
import type { StintResult } from '../stint/result.ts';
import { run } from '../stint/run.ts';
import type {
  ByHandReply,
  EngineDoor,
  NotFound,
  RunReply,
  RunRequest,
  SensitivityReply,
  SpanReply,
  SpanRequest,
  SpreadReply,
} from './protocol.ts';

const door: EngineDoor = {
  run: (request) => Promise.resolve(reply(request)),
  findSpans: (request) => searched(request, safeSpans, (spans): SpanReply => ({ kind: 'spans', spans })),
  findSpread: ({ draws, seed, ...request }) =>
    searched(
      request,
      (scenario, options) => spread(scenario, { draws, seed }, options),
      (found): SpreadReply => ({ kind: 'spread', spread: found }),
    ),
  findSensitivity: (request) =>
    searched(request, sensitivity, (corners): SensitivityReply => ({ kind: 'sensitivity', corners })),
  followByHand: handReply,
  leaveSearch: () => void (latestSearch += 1),
};

let latestSearch = 0;

/** Drives a search to its end, unless another is begun or it is left in one of its rests. */
async function searched<Found, Reply>(
  { scenario, driven }: SpanRequest,
  begin: (scenario: Scenario, options: CompileOptions) => Search<Found>,
  replyOf: (found: Found) => Reply,
): Promise<Reply | NotFound> {
  const mine = ++latestSearch;
  const checked = checkScenario(scenario);
  if (!checked.ok) return { kind: 'failure', message: checked.problems.map(problemLine).join('; ') };
  try {
    const search = begin(checked.scenario, { driven });
    for (let step = search.next(); ; step = search.next()) {
      if (step.done) return replyOf(step.value);
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

/** Loaded when it is asked for: few who open the page go there. */
async function handReply({ scenario, driven }: SpanRequest): Promise<ByHandReply> {
  const checked = checkScenario(scenario);
  if (!checked.ok) return { kind: 'failure', message: checked.problems.map(problemLine).join('; ') };
  try {
    const { byHand } = await import('../report/by-hand/by-hand.ts');
    const model = compile(checked.scenario, { driven });
    const result = run(model);
    const corners = result.corners.map(({ axle, side, ranges }, i) => ({
      axle,
      side,
      ranges,
      byHand: byHand(model, result, i),
    }));
    return { kind: 'by hand', corners, judged: unknownsOf(checked.scenario).length };
  } catch (error) {
    return { kind: 'failure', message: error instanceof Error ? error.message : String(error) };
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
