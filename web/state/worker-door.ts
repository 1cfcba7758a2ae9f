/** The door to the engine in a worker of its own. A worker that breaks rejects all that was asked of it. */
import { proxy, wrap } from 'comlink';
import type { EngineDoor } from '../../engine/index.ts';
import type { OpenDoor } from './engine-client.ts';

export interface WorkerDoor extends OpenDoor {
  readTrace: EngineDoor['readTrace'];
  findSpans: EngineDoor['findSpans'];
  leaveSpans: EngineDoor['leaveSpans'];
}

export function openWorker(): WorkerDoor {
  const worker = new Worker(new URL('../../engine/shell/worker.ts', import.meta.url), { type: 'module' });
  const engine = wrap<EngineDoor>(worker);
  const broken = new Promise<never>((_, reject) => {
    worker.onerror = (event) => {
      event.preventDefault();
      reject(new Error(event.message || 'it could not be started'));
    };
    worker.onmessageerror = () => reject(new Error('its answer could not be read'));
  });
  broken.catch(() => undefined); // heard through the races below
  return {
    run: (request) => Promise.race([engine.run(request), broken]),
    findSpans: (request) => Promise.race([engine.findSpans(request), broken]),
    leaveSpans: () => void engine.leaveSpans(),
    readTrace: (file, choices, progress) =>
      Promise.race([engine.readTrace(file, choices, proxy(progress)), broken]),
    close: () => worker.terminate(),
  };
}
