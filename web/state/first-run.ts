/**
 * The stint that the page opens with, run while the page itself is still on its way. A script of its own (`vite.config.ts`)
 * that runs as soon as it is there.
 */
import { defaultScenario } from '../../engine/scenario/default-scenario.ts';
import type { OpenDoor } from './engine-client.ts';
import { openWorker } from './worker-door.ts';

export const firstScenario = defaultScenario();

const door = openWorker();
const reply = door.run({ id: 1, scenario: firstScenario, driven: null });
reply.catch(() => undefined); // heard by whoever asks for it

let isTaken = false;

/** The worker that runs already, for who comes first; a new one for everyone after. */
export function openFirst(): OpenDoor {
  if (isTaken) return openWorker();
  isTaken = true;
  let isAsked = false;
  return {
    ...door,
    run(request) {
      const isFirst = !isAsked && request.scenario === firstScenario;
      isAsked = true;
      return isFirst ? reply.then((done) => ({ ...done, id: request.id })) : door.run(request);
    },
  };
}
