/**
 * A few workers that share one queue of jobs. They are opened as jobs ask for them and then kept; one that dies is replaced
 * and its job done again. Knows nothing of what the jobs do.
 */
import type { Alarm } from './engine-client.ts';

/** Rejects when the worker that does it has died. */
export type Job<Worker, T> = (worker: Worker) => Promise<T>;

export interface Terms<Worker> {
  /** Aborted, a job that waits is never begun; one that is under way must see to its end itself. */
  signal: AbortSignal;
  /** The only worker that can do it; null: any. */
  by?: Worker | null;
  /** It is not begun while anybody hurries. */
  canWait?: boolean;
}

interface Waiting<Worker> {
  job: Job<Worker, unknown>;
  terms: Terms<Worker>;
  deaths: number;
  resolve(value: unknown): void;
  reject(cause: Error): void;
}

interface Place<Worker> {
  worker: Worker;
  isBusy: boolean;
  isWarm: boolean;
}

/** How often a job is done again by another worker before it is given up. */
const LIVES = 2;
/** How long the first and a later job of a worker may take before it counts as dead [ms]. */
const PATIENCE_FIRST_MS = 20_000;
const PATIENCE_MS = 10_000;

export class Pool<Worker extends { close(): void }> {
  #open: () => Worker;
  #alarm: Alarm;
  #size: number;
  #most: number;
  #places: Place<Worker>[] = [];
  #queue: Waiting<Worker>[] = [];
  #hurrying = 0;

  constructor(open: () => Worker, size: number, alarm: Alarm) {
    this.#open = open;
    this.#alarm = alarm;
    this.#size = this.#most = size;
  }

  do<T>(job: Job<Worker, T>, terms: Terms<Worker>): Promise<T> {
    return new Promise<T>((resolve, reject) => {
      this.#queue.push({ job, terms, deaths: 0, resolve, reject });
      this.#handOut();
    });
  }

  /** At most so many workers are given something to do, until another number is set; what is under way goes on. */
  limit(most = this.#size): void {
    this.#most = Math.min(most, this.#size);
    this.#handOut();
  }

  /** Until it ends, no job that can wait is begun, not even by a worker that is free: the next one in a hurry may come at once. */
  async hurry<T>(work: () => Promise<T>): Promise<T> {
    this.#hurrying += 1;
    try {
      return await work();
    } finally {
      this.#hurrying -= 1;
      this.#handOut();
    }
  }

  close(): void {
    for (const { worker } of this.#places) worker.close();
    this.#places = [];
    for (const { reject } of this.#queue.splice(0)) reject(new Error('closed'));
  }

  #handOut(): void {
    for (const waiting of this.#queue) {
      const why = this.#whyNever(waiting.terms);
      if (!why) continue;
      this.#queue = this.#queue.filter((each) => each !== waiting);
      waiting.reject(why);
    }
    for (let next = this.#match(); next; next = this.#match()) this.#start(next.place, next.waiting);
  }

  /** Why a job that waits is never begun: it was left, or the worker that alone could do it has died. */
  #whyNever({ signal, by = null }: Terms<Worker>): Error | null {
    if (signal.aborted) return signal.reason as Error;
    const isThere = !by || this.#places.some(({ worker }) => worker === by);
    return isThere ? null : new Error('its worker stopped');
  }

  /** The next job that a worker is free for; a worker is opened only for a job that none of those there can do now. */
  #match(): { place: Place<Worker>; waiting: Waiting<Worker> } | null {
    if (this.#places.filter(({ isBusy }) => isBusy).length >= this.#most) return null;
    for (const [i, waiting] of this.#queue.entries()) {
      const { by = null, canWait = false } = waiting.terms;
      if (canWait && this.#hurrying > 0) continue;
      const place = this.#places.find(({ worker, isBusy }) => !isBusy && (by ?? worker) === worker);
      const used = place ?? (by ? null : this.#opened());
      if (!used) continue;
      this.#queue.splice(i, 1);
      return { place: used, waiting };
    }
    return null;
  }

  #opened(): Place<Worker> | null {
    if (this.#places.length >= this.#size) return null;
    const place = { worker: this.#open(), isBusy: false, isWarm: false };
    this.#places.push(place);
    return place;
  }

  #start(place: Place<Worker>, waiting: Waiting<Worker>): void {
    place.isBusy = true;
    const patience_ms = place.isWarm ? PATIENCE_MS : PATIENCE_FIRST_MS;
    const cancel = this.#alarm(patience_ms, () => this.#died(place, waiting, 'it gave no answer'));
    waiting.job(place.worker).then(
      (value) => {
        cancel();
        if (!this.#places.includes(place)) return;
        place.isBusy = false;
        place.isWarm = true;
        waiting.resolve(value);
        this.#handOut();
      },
      (cause: unknown) => {
        cancel();
        this.#died(place, waiting, cause instanceof Error ? cause.message : String(cause));
      },
    );
  }

  #died(place: Place<Worker>, waiting: Waiting<Worker>, cause: string): void {
    if (!this.#places.includes(place)) return;
    place.worker.close();
    this.#places = this.#places.filter((each) => each !== place);
    waiting.deaths += 1;
    if (waiting.deaths > LIVES || waiting.terms.by) waiting.reject(new Error(`its worker stopped, ${cause}`));
    else this.#queue.unshift(waiting);
    this.#handOut();
  }
}
