/** Writes the sheet away soon after each change: when the hand rests, or while it moves now and then. Knows no storage. */
import type { Alarm } from './engine-client.ts';

/** A change is written when none has followed for this long [ms] */
const REST_MS = 400;
/** However fast changes follow, one is written this long after the first of them [ms] */
const MOST_MS = 3000;

export interface KeeperTerms<Sheet> {
  write(sheet: Sheet): Promise<void>;
  kept(sheet: Sheet): void;
  failed(cause: unknown): void;
  alarm: Alarm;
  now(): number;
}

export class Keeper<Sheet> {
  #terms: KeeperTerms<Sheet>;
  #take: (() => Sheet) | null = null;
  #since_ms = 0;
  #cancel: () => void = () => undefined;
  #isWriting = false;
  #isStopped = false;

  constructor(terms: KeeperTerms<Sheet>) {
    this.#terms = terms;
  }

  /** Something has changed: what `take` gives is written soon. */
  change(take: () => Sheet): void {
    if (this.#isStopped) return;
    const now_ms = this.#terms.now();
    // a clock that is set back starts the wait anew
    if (!this.#take || now_ms < this.#since_ms) this.#since_ms = now_ms;
    this.#take = take;
    this.#cancel();
    const rest_ms = Math.min(REST_MS, Math.max(0, this.#since_ms + MOST_MS - now_ms));
    this.#cancel = this.#terms.alarm(rest_ms, () => this.flush());
  }

  /** Writes at once what has not been written: the page is about to go. */
  flush(): void {
    if (!this.#take || this.#isWriting || this.#isStopped) return;
    this.#cancel();
    const sheet = this.#take();
    this.#take = null;
    this.#isWriting = true;
    this.#terms
      .write(sheet)
      .then(
        () => this.#isStopped || this.#terms.kept(sheet),
        (cause: unknown) => this.#isStopped || this.#terms.failed(cause),
      )
      .finally(() => {
        this.#isWriting = false;
        this.flush(); // what has changed in the meantime
      });
  }

  /** Another tab keeps the sheet from now on. */
  stop(): void {
    this.#isStopped = true;
    this.#cancel();
  }
}
