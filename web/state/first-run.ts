/**
 * The stint that the page opens with, run while the page itself is still on its way: the one that was kept, else the default. A
 * script of its own (`vite.config.ts`) that runs as soon as it is there. Nothing is awaited on its top: that would part the page's
 * scripts into many small ones.
 */
import type { Scenario } from '../../engine/index.ts';
import { defaultScenario } from '../../engine/scenario/default-scenario.ts';
import type { OpenDoor } from './engine-client.ts';
import { recallSheet, type KeptSheet } from './kept-storage.ts';
import { LINK_MARK } from './link-mark.ts';
import { openWorker } from './worker-door.ts';

/** The page opens without what was kept after this; the worker takes a part of it to start in any case [ms] */
const PATIENCE_MS = 1000;

const door = openWorker();

/** Null where nothing was kept, undefined where the storage has not told. */
export const kept: Promise<KeptSheet | null | undefined> = recallSheet(PATIENCE_MS).catch(() => undefined);

/** What is run already, not checked yet. A link is read by the page. */
export const first = kept.then((sheet) => {
  const scenario: Scenario = sheet?.scenario ?? defaultScenario();
  if (location.hash.startsWith(LINK_MARK)) return { scenario, reply: null };
  const reply = door.run({ id: 1, scenario, driven: null });
  reply.catch(() => undefined); // heard by whoever asks for it
  return { scenario, reply };
});

let isTaken = false;

/** The worker that runs already, for who comes first; a new one for everyone after. */
export function openFirst(): OpenDoor {
  if (isTaken) return openWorker();
  isTaken = true;
  let isAsked = false;
  return {
    ...door,
    async run(request) {
      const isFirst = !isAsked;
      isAsked = true;
      const { scenario, reply } = await first;
      const isSame = isFirst && reply !== null && request.scenario === scenario;
      return isSame ? { ...(await reply), id: request.id } : door.run(request);
    },
  };
}
