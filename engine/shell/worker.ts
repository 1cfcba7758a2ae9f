/** The browser's door: runs stints in a worker, off the page's thread. */
import { expose, transfer } from 'comlink';
import { unknownsOf } from '../advise/unknowns.ts';
import { checkScenario } from '../scenario/parse.ts';
import { problemLine } from '../scenario/problem.ts';
import { compile } from '../stint/compile.ts';
import type { StintResult } from '../stint/result.ts';
import { run } from '../stint/run.ts';
import type { ByHandReply, EngineDoor, RunReply, RunRequest } from './protocol.ts';

/** Loaded by the first search: the picture does without. Whoever asks first is served first. */
const load = async () => new (await import('./searches.ts')).Searches();
let loading: ReturnType<typeof load> | null = null;
const searches = () => (loading ??= load());

const door: EngineDoor = {
  run: (request) => Promise.resolve(reply(request)),
  followByHand: handReply,
  learn: async (search, question) => (await searches()).learn(search, question),
  advance: async (search, outcomes) => (await searches()).advance(search, outcomes),
  answer: async (search, ask) => (await searches()).answer(search, ask),
  forget: async (search) => (await searches()).forget(search),
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

/** Loaded when it is asked for: few who open the page go there. */
async function handReply({
  scenario,
  driven,
}: Pick<RunRequest, 'scenario' | 'driven'>): Promise<ByHandReply> {
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
