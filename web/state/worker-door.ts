/** The doors to the engine in workers of their own. A worker that breaks rejects all that was asked of it. */
import { proxy, wrap } from 'comlink';
import type {
  ByHandReply,
  CutReply,
  CutRequest,
  EngineDoor,
  ReaderDoor,
  RunRequest,
} from '../../engine/index.ts';
import { browserAlarm } from './alarm.ts';
import { breaking } from './breaking.ts';
import type { OpenDoor } from './engine-client.ts';
import { finder, type Finder, type SearchDoor } from './finder.ts';
import type { TraceDoor } from './trace-client.ts';

/** Follows the main numbers by hand. */
export interface HandDoor {
  followByHand(request: Pick<RunRequest, 'scenario' | 'driven'>): Promise<ByHandReply>;
  close(): void;
}

/** Draws what is to be cut. */
export interface CutDoor extends OpenDoor {
  drawCut(request: CutRequest): Promise<CutReply>;
}

const startEngine = (): Worker =>
  new Worker(new URL('../../engine/shell/worker.ts', import.meta.url), { type: 'module' });

/** For stints. */
export function openWorker(): OpenDoor & HandDoor & CutDoor {
  const worker = startEngine();
  const engine = wrap<EngineDoor>(worker);
  const orBroken = breaking(worker);
  return {
    run: (request) => orBroken(engine.run(request)),
    followByHand: (request) => orBroken(engine.followByHand(request)),
    drawCut: (request) => orBroken(engine.drawCut(request)),
    close: () => worker.terminate(),
  };
}

/** More hardly pay for a hundred runs, and each has the engine to load. */
const MOST_SEARCHERS = 4;

/** For the advice on stints: as many workers as there are cores, opened when they are needed. */
export const openFinder = (): Finder =>
  finder(openSearcher, Math.min(navigator.hardwareConcurrency || 1, MOST_SEARCHERS), browserAlarm);

/** One of those. */
export function openSearcher(): SearchDoor {
  const worker = startEngine();
  const engine = wrap<EngineDoor>(worker);
  const orBroken = breaking(worker);
  return {
    learn: (search, question) => unheard(engine.learn(search, question)),
    advance: (search, outcomes) => orBroken(engine.advance(search, outcomes)),
    answer: (search, ask) => orBroken(engine.answer(search, ask)),
    forget: (search) => unheard(engine.forget(search)),
    close: () => worker.terminate(),
  };
}

/** Where it goes wrong, so does what is asked next. */
const unheard = (said: Promise<void>): void => void said.catch(() => undefined);

/** For logged files. */
export function openReader(): TraceDoor {
  const worker = new Worker(new URL('../../engine/shell/trace-worker.ts', import.meta.url), {
    type: 'module',
  });
  const reader = wrap<ReaderDoor>(worker);
  const orBroken = breaking(worker);
  return {
    readTrace: (file, choices, progress) => orBroken(reader.readTrace(file, choices, proxy(progress))),
    close: () => worker.terminate(),
  };
}
