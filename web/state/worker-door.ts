/** The doors to the engine in workers of their own. A worker that breaks rejects all that was asked of it. */
import { proxy, wrap } from 'comlink';
import type { ByHandReply, EngineDoor, ReaderDoor, SpanRequest } from '../../engine/index.ts';
import type { OpenDoor } from './engine-client.ts';
import type { AdviceDoor } from './adviser.svelte.ts';
import type { TraceDoor } from './trace-client.ts';

/** Follows the main numbers by hand. */
export interface HandDoor {
  followByHand(request: SpanRequest): Promise<ByHandReply>;
  close(): void;
}

/** For stints and the advice on them. */
export function openWorker(): OpenDoor & AdviceDoor & HandDoor {
  const worker = new Worker(new URL('../../engine/shell/worker.ts', import.meta.url), { type: 'module' });
  const engine = wrap<EngineDoor>(worker);
  const broken = breaking(worker);
  return {
    run: (request) => Promise.race([engine.run(request), broken]),
    findSpans: (request) => Promise.race([engine.findSpans(request), broken]),
    findSpread: (request) => Promise.race([engine.findSpread(request), broken]),
    findSensitivity: (request) => Promise.race([engine.findSensitivity(request), broken]),
    followByHand: (request) => Promise.race([engine.followByHand(request), broken]),
    leaveSearch: () => void engine.leaveSearch(),
    close: () => worker.terminate(),
  };
}

/** For logged files. */
export function openReader(): TraceDoor {
  const worker = new Worker(new URL('../../engine/shell/trace-worker.ts', import.meta.url), {
    type: 'module',
  });
  const reader = wrap<ReaderDoor>(worker);
  const broken = breaking(worker);
  return {
    readTrace: (file, choices, progress) =>
      Promise.race([reader.readTrace(file, choices, proxy(progress)), broken]),
    close: () => worker.terminate(),
  };
}

/** Rejects when the worker breaks. */
function breaking(worker: Worker): Promise<never> {
  const broken = new Promise<never>((_, reject) => {
    worker.onerror = (event) => {
      event.preventDefault();
      reject(new Error(event.message || 'it could not be started'));
    };
    worker.onmessageerror = () => reject(new Error('its answer could not be read'));
  });
  broken.catch(() => undefined); // heard through the races of whoever asked
  return broken;
}
