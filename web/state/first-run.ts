/**
 * The stint that the page opens with, run while the page itself is still on its way: the one of the link it was opened by, else
 * the one that was kept, else the default. A script of its own (`vite.config.ts`) that runs as soon as it is there.
 */
import type { Scenario } from '../../engine/index.ts';
import { defaultScenario } from '../../engine/scenario/default-scenario.ts';
import type { OpenDoor } from './engine-client.ts';
import { recallSheet, type KeptSheet, type Place } from './kept-storage.ts';
import { LINK_MARK } from './link-mark.ts';
import type { Linked } from './share-link.ts';
import { openWorker } from './worker-door.ts';

interface Opening {
  /** Of a link it is checked; of what was kept it is not yet. */
  scenario: Scenario;
  /** Null where nothing was kept, undefined where the storage has not told. */
  kept: KeptSheet | null | undefined;
  /** What the link says that the page was opened by; null where it was by none. */
  link: Linked | null;
  place: Place | null;
}

/** The page opens without what was kept after this; the worker takes a part of it to start in any case [ms] */
const PATIENCE_MS = 1000;

const door = openWorker();
export const opening: Opening = await open();
const reply = door.run({ id: 1, scenario: opening.scenario, driven: null });
reply.catch(() => undefined); // heard by whoever asks for it

async function open(): Promise<Opening> {
  const [kept, link] = await Promise.all([recallSheet(PATIENCE_MS).catch(() => undefined), linked()]);
  if (link?.ok) return { scenario: link.scenario, kept, link, place: null };
  return { scenario: kept?.scenario ?? defaultScenario(), kept, link, place: kept?.place ?? null };
}

function linked(): Promise<Linked | null> {
  if (!location.hash.startsWith(LINK_MARK)) return Promise.resolve(null);
  return import('./share-link.ts').then(
    ({ scenarioOf }) => scenarioOf(location.hash),
    () => ({ ok: false, why: 'a part of the page that reads it could not be loaded' }),
  );
}

let isTaken = false;

/** The worker that runs already, for who comes first; a new one for everyone after. */
export function openFirst(): OpenDoor {
  if (isTaken) return openWorker();
  isTaken = true;
  let isAsked = false;
  return {
    ...door,
    run(request) {
      const isFirst = !isAsked && request.scenario === opening.scenario;
      isAsked = true;
      return isFirst ? reply.then((done) => ({ ...done, id: request.id })) : door.run(request);
    },
  };
}
