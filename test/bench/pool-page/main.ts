/** The page with its own pool in the bench's hands: what is looked for here is a search beside those of the page. */
import '../../../web/theme.css';
import { mount } from 'svelte';
import App from '../../../web/App.svelte';
import type { Question } from '../../../engine/index.ts';
import { browserAlarm } from '../../../web/state/alarm.ts';
import { finder, type Finder, type SearchDoor } from '../../../web/state/finder.ts';
import { opening } from '../../../web/state/opening.ts';
import { openSearcher } from '../../../web/state/worker-door.ts';

export interface PoolBench {
  /** From the question to the answer, by so many workers [ms] */
  timeOf(question: Question, workers?: number): Promise<number>;
  /** So many runs of the question's stint by as many workers as cores, each with both mouths blanked in its own way [ms] */
  blankings(question: Question, times: number): Promise<number>;
  /** Begins a search and leaves it after so many runs; ends when another has begun its first [ms] */
  cancel(question: Question, after: number): Promise<{ free: number; next: number }>;
  /** Begins a search that is still wanted whatever the hand does; ends when it has had its first run. */
  begin(question: Question, canWait?: boolean): Promise<void>;
  /** Ends it; gives how many runs it had, and the most workers that were busy since the last call of `watch`. */
  end(): { runs: number; most: number };
  watch(): void;
}

/** What each worker is at, by the number of the search. */
const busy = new Map<SearchDoor, number>();
let most = 0;
let begun = (_search: number): void => undefined;
let ended = (): void => undefined;

function watched(): SearchDoor {
  const door = openSearcher();
  const during = async <T>(search: number, done: Promise<T>): Promise<T> => {
    busy.set(door, search);
    most = Math.max(most, busy.size);
    try {
      return await done;
    } finally {
      busy.delete(door);
      ended();
    }
  };
  return {
    ...door,
    advance: (search, outcomes) => during(search, door.advance(search, outcomes)),
    answer: (search, ask) => {
      begun(search);
      return during(search, door.answer(search, ask));
    },
  };
}

/** Number of a search that the pool does not know. */
const BLANKINGS = -1;

const pool: Finder = finder(watched, navigator.hardwareConcurrency, browserAlarm);
let wanted = new AbortController();
let runs = 0;

const bench: PoolBench = {
  async timeOf(question, workers) {
    pool.limit(workers);
    const start_ms = performance.now();
    const { kind } = await pool.find(question, { signal: new AbortController().signal });
    const took_ms = performance.now() - start_ms;
    pool.limit();
    if (kind !== 'found') throw new Error(`bench: ${kind}`);
    return took_ms;
  },
  async blankings(question, times) {
    const doors = Array.from({ length: navigator.hardwareConcurrency }, watched);
    for (const door of doors) door.learn(BLANKINGS, question);
    const answerAll = async (many: number, from: number): Promise<void> => {
      let next = 0;
      const askOf = (i: number) => {
        const share = (from + i / many) % 1;
        return { changes: { 'blanking_pct.front': 100 * share, 'blanking_pct.rear': 100 * (1 - share) } };
      };
      await Promise.all(
        doors.map(async (door) => {
          for (let i = next++; i < many; i = next++) await door.answer(BLANKINGS, askOf(i));
        }),
      );
    };
    await answerAll(60, Math.SQRT1_2);
    const start_ms = performance.now();
    await answerAll(times, Math.random() / times);
    const took_ms = performance.now() - start_ms;
    for (const door of doors) door.close();
    return took_ms;
  },
  async cancel(question, after) {
    const end = new AbortController();
    let start_ms = 0;
    let next_ms = 0;
    let free_ms = 0;
    await new Promise<void>((resolve) => {
      const next = new AbortController();
      const progress = (done: number): void => {
        if (done !== after) return;
        // at any moment of a run, not only at its end
        setTimeout(() => {
          const old = new Set(busy.values());
          const isOver = (): boolean => next_ms > 0 && free_ms > 0;
          const finish = (): void => {
            begun = ended = () => undefined;
            next.abort();
            resolve();
          };
          begun = (search) => {
            if (old.has(search)) return;
            next_ms ||= performance.now();
            if (isOver()) finish();
          };
          ended = () => {
            if ([...busy.values()].some((search) => old.has(search))) return;
            free_ms ||= performance.now();
            if (isOver()) finish();
          };
          start_ms = performance.now();
          end.abort();
          void pool.find(question, { signal: next.signal });
        }, 10 * Math.random());
      };
      void pool.find(question, { signal: end.signal, progress });
    });
    return { free: free_ms - start_ms, next: next_ms - start_ms };
  },
  begin(question, canWait = false) {
    wanted = new AbortController();
    runs = 0;
    return new Promise((resolve) => {
      const progress = (done: number): void => {
        runs = done;
        resolve();
      };
      void pool.find(question, { signal: wanted.signal, canWait, progress });
    });
  },
  watch: () => void (most = 0),
  end() {
    wanted.abort();
    return { runs, most };
  },
};

Object.assign(window, { bench: () => bench });
const target = document.getElementById('page');
if (!target) throw new Error('page: no element to draw in');
void opening().then((opened) => mount(App, { target, props: { opening: opened, finder: pool } }));
