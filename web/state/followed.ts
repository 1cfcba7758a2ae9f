/** The main numbers of a stint followed by hand, once for each and only when somebody asks. */
import type { ByHandReply, Scenario } from '../../engine/index.ts';
import { openWorker, type HandDoor } from './worker-door.ts';

const known = new WeakMap<Scenario, Promise<ByHandReply>>();

/** What fails is told as a reply, and tried again when it is next asked. */
export function followed(scenario: Scenario, open: () => HandDoor = openWorker): Promise<ByHandReply> {
  const before = known.get(scenario);
  if (before) return before;
  const asked = ask(scenario, open);
  known.set(scenario, asked);
  void asked.then((reply) => {
    if (reply.kind === 'failure') known.delete(scenario);
  });
  return asked;
}

async function ask(scenario: Scenario, open: () => HandDoor): Promise<ByHandReply> {
  const door = open();
  try {
    return await door.followByHand({ scenario, driven: null });
  } catch (error) {
    return { kind: 'failure', message: error instanceof Error ? error.message : String(error) };
  } finally {
    door.close();
  }
}
