import { beforeEach, describe, expect, it } from 'vitest';
import type { RunReply, RunRequest, Scenario, StintResult } from '../../../engine/index.ts';
import { engineClient, type OpenDoor } from '../../../web/state/engine-client.ts';

const scenario = (name: string): Scenario => ({ name }) as Scenario;
const result = (id: number): RunReply => ({ id, kind: 'result', result: {} as StintResult, elapsed_ms: 10 });

/** A door whose replies the test gives by hand. */
class FakeDoor implements OpenDoor {
  asked: RunRequest[] = [];
  isClosed = false;
  #answers: { resolve: (reply: RunReply) => void; reject: (cause: Error) => void }[] = [];

  run = (request: RunRequest): Promise<RunReply> => {
    this.asked.push(request);
    return new Promise((resolve, reject) => this.#answers.push({ resolve, reject }));
  };
  close(): void {
    this.isClosed = true;
  }
  async answer(reply: RunReply): Promise<void> {
    this.#answers.at(-1)?.resolve(reply);
    await settled();
  }
  async die(message: string): Promise<void> {
    this.#answers.at(-1)?.reject(new Error(message));
    await settled();
  }
}

const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

describe('the engine client', () => {
  let doors: FakeDoor[];
  let replies: { reply: RunReply; name: string }[];
  let busy: boolean[];
  let restarts: number;
  let ring: () => void;
  let patience_ms: number;
  let client: ReturnType<typeof engineClient>;

  const door = (): FakeDoor => doors.at(-1)!;
  const askedNames = (): string[] => doors.flatMap(({ asked }) => asked.map((each) => each.scenario.name));

  beforeEach(() => {
    [doors, replies, busy, restarts] = [[], [], [], 0];
    const open = (): FakeDoor => {
      doors.push(new FakeDoor());
      return door();
    };
    const listener = {
      replied: (reply: RunReply, asked: RunRequest) =>
        void replies.push({ reply, name: asked.scenario.name }),
      busy: (is: boolean) => void busy.push(is),
      restarted: () => void (restarts += 1),
    };
    client = engineClient(open, listener, (after_ms, wake) => {
      patience_ms = after_ms;
      ring = wake;
      return () => (ring = () => undefined);
    });
  });

  it('runs one request and hands over its reply with what was asked', async () => {
    client.request(scenario('a'));
    await door().answer(result(1));
    expect(replies).toEqual([{ reply: result(1), name: 'a' }]);
    expect(busy).toEqual([true, false]);
  });

  it('keeps one worker warm for all runs', async () => {
    for (const id of [1, 2, 3]) {
      client.request(scenario(String(id)));
      await door().answer(result(id));
    }
    expect(doors).toHaveLength(1);
  });

  it('has at most one run under way and one waiting: the latest', async () => {
    for (const name of ['a', 'b', 'c', 'd']) client.request(scenario(name));
    expect(askedNames()).toEqual(['a']);
    await door().answer(result(1));
    expect(askedNames()).toEqual(['a', 'd']);
    await door().answer(result(4));
    expect(replies.map(({ name }) => name)).toEqual(['a', 'd']);
  });

  it('drops a reply whose number is not the one under way', async () => {
    client.request(scenario('a'));
    await door().answer(result(7));
    expect(replies).toEqual([]);
  });

  it('does not complain about a value that the hand has left behind', async () => {
    client.request(scenario('a'));
    client.request(scenario('b'));
    await door().answer({ id: 1, kind: 'failure', message: 'too hot to compute' });
    await door().answer(result(2));
    expect(replies.map(({ name }) => name)).toEqual(['b']);
  });

  it('opens a new worker and repeats the run when the worker dies', async () => {
    client.request(scenario('a'));
    await door().die('out of memory');
    expect(doors).toHaveLength(2);
    expect(doors[0]?.isClosed).toBe(true);
    expect(restarts).toBe(1);
    await door().answer(result(1));
    expect(replies).toEqual([{ reply: result(1), name: 'a' }]);
  });

  it('repeats only the latest request after a death', async () => {
    client.request(scenario('a'));
    client.request(scenario('b'));
    await door().die('gone');
    expect(askedNames()).toEqual(['a', 'b']);
  });

  it('takes a worker that does not answer for dead', async () => {
    client.request(scenario('a'));
    ring();
    expect(doors).toHaveLength(2);
    await door().answer(result(1));
    expect(replies.map(({ name }) => name)).toEqual(['a']);
  });

  it('ignores what a worker given up for dead says late', async () => {
    client.request(scenario('a'));
    const late = door();
    ring();
    await late.answer(result(1));
    expect(replies).toEqual([]);
  });

  it('gives up after three deaths in a row, says why, and starts afresh with the next request', async () => {
    client.request(scenario('a'));
    for (let i = 0; i < 3; i++) await door().die('out of memory');
    expect(replies.map(({ reply }) => reply)).toEqual([
      { id: 1, kind: 'failure', message: 'the worker stopped: out of memory' },
    ]);
    expect(busy.at(-1)).toBe(false);
    client.request(scenario('b'));
    await door().answer(result(2));
    expect(replies.at(-1)?.name).toBe('b');
  });

  it('is more patient with the first run, which loads the worker, than with later ones', async () => {
    client.request(scenario('a'));
    const first_ms = patience_ms;
    await door().answer(result(1));
    client.request(scenario('b'));
    expect(patience_ms).toBeLessThan(first_ms);
  });
});
