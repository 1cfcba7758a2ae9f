/** Finds what a question asks for: one worker of a pool holds the search, and all of them bring the runs that it asks for. */
import type { Answer, Ask, Failure, Findings, Outcome, Question, Sought, Step } from '../../engine/index.ts';
import type { Alarm } from './engine-client.ts';
import { Pool } from './pool.ts';

/** A worker as searches use it. Every promise rejects when it has died. */
export interface SearchDoor {
  learn(search: number, question: Question): void;
  advance(search: number, outcomes: readonly Outcome[][]): Promise<Step>;
  answer(search: number, ask: Ask): Promise<Answer>;
  forget(search: number): void;
  close(): void;
}

export type Found<What extends Sought> =
  { kind: 'found'; found: Findings[What] } | { kind: 'left' } | Failure;

export interface Watch {
  /** Aborted, nothing more is begun for the search, and what is under way ends after the corner it is at. */
  signal: AbortSignal;
  /** How many runs are done of those asked for so far. */
  progress?(done: number, asked: number): void;
  /** Whether all others go first. */
  canWait?: boolean;
}

export interface Finder {
  find<What extends Sought>(question: Question<What>, watch: Watch): Promise<Found<What>>;
  /** How many workers may be busy at once; as many as there are where no number is given. */
  limit(most?: number): void;
  close(): void;
}

/** How often a search is begun again when the worker that holds it has died. */
const LIVES = 2;

/** The worker that holds the search has died, and with it all that it was told. */
class HolderLost extends Error {}

export function finder(open: () => SearchDoor, size: number, alarm: Alarm): Finder {
  const pool = new Pool(open, size, alarm);
  let last = 0;

  /** One attempt; leaves nothing under way behind it, however it ends. */
  async function drive(
    question: Question,
    { signal, progress, canWait = false }: Watch,
  ): Promise<Found<Sought>> {
    const search = ++last;
    const met = new Set<SearchDoor>();
    const meet = (door: SearchDoor): SearchDoor => {
      if (!met.has(door)) door.learn(search, question);
      met.add(door);
      return door;
    };
    const end = new AbortController();
    const leave = (): void => {
      end.abort(new Error('the search was left'));
      for (const door of met) door.forget(search);
    };
    let [done, asked] = [0, 0];
    const bring = async (ask: Ask): Promise<Outcome[]> => {
      const answer = await pool.do((door) => meet(door).answer(search, ask), { signal: end.signal, canWait });
      if (answer.kind === 'failure') throw new Error(answer.message);
      if (answer.kind === 'left') throw new Error('the search was left');
      progress?.(++done, asked);
      return answer.outcomes;
    };
    let holder: SearchDoor | null = null;
    const advance = async (outcomes: readonly Outcome[][]): Promise<Step> => {
      const by = holder;
      const job = (door: SearchDoor): Promise<Step> => meet((holder = door)).advance(search, outcomes);
      try {
        return await pool.do(job, { signal: end.signal, by, canWait });
      } catch (cause) {
        throw by ? new HolderLost((cause as Error).message) : cause;
      }
    };
    signal.addEventListener('abort', leave);
    try {
      let step = await advance([]);
      while (step.kind === 'asks') {
        asked += step.asks.length;
        step = await advance(await Promise.all(step.asks.map(bring)));
      }
      return step;
    } finally {
      signal.removeEventListener('abort', leave);
      leave();
    }
  }

  const find = (question: Question, watch: Watch): Promise<Found<Sought>> =>
    watch.canWait ? findAtLength(question, watch) : pool.hurry(() => findAtLength(question, watch));

  async function findAtLength(question: Question, watch: Watch): Promise<Found<Sought>> {
    for (let life = 0; !watch.signal.aborted; life++) {
      try {
        const found = await drive(question, watch);
        if (!watch.signal.aborted) return found;
      } catch (cause) {
        if (watch.signal.aborted) break;
        if (!(cause instanceof HolderLost) || life === LIVES)
          return { kind: 'failure', message: (cause as Error).message };
      }
    }
    return { kind: 'left' };
  }

  return {
    find: find as Finder['find'],
    limit: (most) => pool.limit(most),
    close: () => pool.close(),
  };
}
