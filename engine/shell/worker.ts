/**
 * The browser's door: runs stints in a worker, off the page's thread. What comes in was checked by the page, which takes no
 * scenario unchecked: the picture needs no schema here.
 */
import { expose, transfer } from 'comlink';
import { compile } from '../stint/compile.ts';
import type { StintResult } from '../stint/result.ts';
import { run } from '../stint/run.ts';
import { failureOf } from './failure.ts';
import type { CutRequest } from '../cut/cut-sheets.ts';
import type { ByHandReply, CutReply, EngineDoor, HandRequest, RunReply, RunRequest } from './protocol.ts';

/** Loaded by the first search: the picture does without. Whoever asks first is served first. */
const load = async () => new (await import('./searches.ts')).Searches();
let loading: ReturnType<typeof load> | null = null;
const searches = () => (loading ??= load());

const door: EngineDoor = {
  run: (request) => Promise.resolve(reply(request)),
  followByHand: handReply,
  drawCut: cutReply,
  learn: async (search, question) => (await searches()).learn(search, question),
  advance: async (search, outcomes) => (await searches()).advance(search, outcomes),
  answer: async (search, ask) => (await searches()).answer(search, ask),
  forget: async (search) => (await searches()).forget(search),
};

function reply({ id, scenario, driven }: RunRequest): RunReply {
  const start_ms = performance.now();
  try {
    const result = run(compile(scenario, { driven }));
    const answer: RunReply = { id, kind: 'result', result, elapsed_ms: performance.now() - start_ms };
    return transfer(answer, buffersOf(result));
  } catch (error) {
    return { id, ...failureOf(error) };
  }
}

/** Loaded when it is asked for: few who open the page go there. */
async function handReply(request: HandRequest): Promise<ByHandReply> {
  try {
    return (await import('./hand.ts')).followByHand(request);
  } catch (error) {
    return failureOf(error);
  }
}

/** Likewise. */
async function cutReply(request: CutRequest): Promise<CutReply> {
  try {
    return (await import('../cut/cut-sheets.ts')).cutSheets(request);
  } catch (error) {
    return failureOf(error);
  }
}

/** Every buffer of a result: moved to the page, not copied. */
function buffersOf({ clock, corners, track }: StintResult): ArrayBuffer[] {
  const columns: object[] = [clock, ...corners.map((corner) => corner.columns ?? {}), track.outline ?? {}];
  const buffers = columns.flatMap((group) =>
    Object.values(group).map((column: Float64Array) => column.buffer as ArrayBuffer),
  );
  return [...new Set(buffers)];
}

// WebKit runs a worker's first script once more when a later one imports from it: two doors would each have half of a search
const scope = globalThis as { hasDoor?: true };
if (!scope.hasDoor) expose(door);
scope.hasDoor = true;
