import { describe, expect, it } from 'vitest';
import { Pool, type Terms } from '../../../web/state/pool.ts';

interface Doing {
  name: string;
  end: () => void;
  die: () => void;
}

/** A worker under the test's hand. */
class FakeWorker {
  doing: Doing[] = [];
  done: string[] = [];
  isClosed = false;
  constructor(readonly id: number) {}
  work(name: string): Promise<string> {
    return new Promise((resolve, reject) => {
      const end = (): void => {
        this.doing.shift();
        this.done.push(name);
        resolve(name);
      };
      this.doing.push({ name, end, die: () => reject(new Error('killed')) });
    });
  }
  close(): void {
    this.isClosed = true;
  }
}

const settledDown = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

function bench(size: number) {
  const workers: FakeWorker[] = [];
  const alarms: { after_ms: number; ring: () => void; isOff: boolean }[] = [];
  const open = (): FakeWorker => {
    workers.push(new FakeWorker(workers.length));
    return workers.at(-1)!;
  };
  const pool = new Pool(open, size, (after_ms, ring) => {
    const alarm = { after_ms, ring, isOff: false };
    alarms.push(alarm);
    return () => void (alarm.isOff = true);
  });
  const { signal } = new AbortController();
  const ask = (name: string, terms: Terms<FakeWorker> = { signal }): Promise<string> => {
    const done = pool.do((worker) => worker.work(name), terms);
    done.catch(() => undefined);
    return done;
  };
  const busy = (): string[] => workers.flatMap(({ doing }) => doing.map(({ name }) => name));
  const end = async (worker: number): Promise<void> => {
    workers[worker]!.doing[0]!.end();
    await settledDown();
  };
  const die = async (worker: number): Promise<void> => {
    workers[worker]!.doing[0]!.die();
    await settledDown();
  };
  const hang = (): void => alarms.splice(0).forEach(({ isOff, ring }) => !isOff && ring());
  return { pool, workers, alarms, ask, busy, end, die, hang };
}

describe('a pool of workers', () => {
  it('opens one for each job that waits, up to its size, and uses them again', async () => {
    const { workers, ask, busy, end } = bench(2);
    expect(workers).toHaveLength(0);
    const first = ask('a');
    expect(workers).toHaveLength(1);
    for (const name of ['b', 'c', 'd']) void ask(name);
    expect(busy()).toEqual(['a', 'b']);
    await end(0);
    expect(await first).toBe('a');
    await end(1);
    expect(busy()).toEqual(['c', 'd']);
    await end(0);
    await end(1);
    void ask('e');
    expect(workers.map(({ done }) => done)).toEqual([
      ['a', 'c'],
      ['b', 'd'],
    ]);
    expect(workers).toHaveLength(2);
  });

  it('of one worker does one job after the other', async () => {
    const { workers, ask, busy, end } = bench(1);
    void ask('a');
    void ask('b');
    expect(busy()).toEqual(['a']);
    await end(0);
    expect(busy()).toEqual(['b']);
    expect(workers).toHaveLength(1);
  });

  it('keeps to a limit as soon as what is under way ends, and fills up when that is lifted', async () => {
    const { pool, ask, busy, end } = bench(2);
    for (const name of ['a', 'b', 'c', 'd', 'e']) void ask(name);
    pool.limit(1);
    expect(busy()).toEqual(['a', 'b']);
    await end(1);
    expect(busy()).toEqual(['a']);
    await end(0);
    expect(busy()).toEqual(['c']);
    pool.limit();
    expect(busy().sort()).toEqual(['c', 'd']);
  });

  it('never begins a job whose signal has aborted, and gives its turn to the next', async () => {
    const { ask, busy, end } = bench(1);
    const left = new AbortController();
    const running = ask('a', left);
    const waiting = ask('b', left);
    void ask('c');
    left.abort(new Error('left'));
    await end(0);
    expect(await running).toBe('a');
    await expect(waiting).rejects.toThrow('left');
    expect(busy()).toEqual(['c']);
    await expect(ask('d', left)).rejects.toThrow('left');
  });

  it('gives a job that only one worker can do to that one, and to others what they can do meanwhile', async () => {
    const { workers, ask, busy, end } = bench(2);
    const { signal } = new AbortController();
    void ask('a');
    void ask('mine', { signal, by: workers[0]! });
    void ask('b');
    expect(busy()).toEqual(['a', 'b']);
    await end(1);
    expect(busy()).toEqual(['a']);
    await end(0);
    expect(workers[0]!.doing[0]!.name).toBe('mine');
  });
});

describe('a worker that dies', () => {
  it('is replaced, and its job is the next to be done', async () => {
    const { workers, ask, busy, die } = bench(1);
    const done = ask('a');
    void ask('b');
    await die(0);
    expect(workers.map(({ isClosed }) => isClosed)).toEqual([true, false]);
    expect(busy()).toEqual(['a', 'a']);
    workers[1]!.doing[0]!.end();
    expect(await done).toBe('a');
  });

  it('takes a job with it that has killed three, and no other', async () => {
    const { workers, ask, die, end } = bench(1);
    const deadly = ask('deadly');
    const next = ask('next');
    for (const worker of [0, 1, 2]) await die(worker);
    await expect(deadly).rejects.toThrow('its worker stopped, killed');
    expect(workers).toHaveLength(4);
    await end(3);
    expect(await next).toBe('next');
  });

  it('is known by giving no answer, at first and later', async () => {
    const { workers, alarms, ask, end, hang } = bench(1);
    void ask('a');
    await end(0);
    void ask('b');
    expect(alarms.map(({ after_ms, isOff }) => [after_ms, isOff])).toEqual([
      [20_000, true],
      [10_000, false],
    ]);
    hang();
    expect(workers.map(({ isClosed }) => isClosed)).toEqual([true, false]);
    expect(workers[1]!.doing[0]!.name).toBe('b');
  });

  it('loses the jobs that only it could do', async () => {
    const { workers, ask, die } = bench(1);
    const { signal } = new AbortController();
    void ask('a');
    const mine = ask('mine', { signal, by: workers[0]! });
    await die(0);
    await expect(mine).rejects.toThrow('its worker stopped');
    const later = ask('mine too', { signal, by: workers[0]! });
    await expect(later).rejects.toThrow('its worker stopped');
    expect(workers[1]!.doing.map(({ name }) => name)).toEqual(['a']);
  });

  it('long after it was given up changes nothing', async () => {
    const { workers, ask, hang } = bench(1);
    const done = ask('a');
    hang();
    workers[0]!.doing[0]!.end();
    await settledDown();
    expect(workers[1]!.doing).toHaveLength(1);
    workers[1]!.doing[0]!.end();
    expect(await done).toBe('a');
  });
});

it('a closed pool shuts its workers and does nothing more', async () => {
  const { pool, workers, ask, busy } = bench(1);
  void ask('a');
  const waiting = ask('b');
  pool.close();
  expect(workers[0]!.isClosed).toBe(true);
  await expect(waiting).rejects.toThrow('closed');
  expect(busy()).toEqual(['a']);
});
