/** Has sheets drawn in a worker of their own: the latest wish wins, the last good sheets stay. */
import type { CutReply, CutRequest, CutSheets, RunReply, RunRequest } from '../../../engine/index.ts';

export interface Door {
  drawCut(request: CutRequest): Promise<CutReply>;
  run(request: RunRequest): Promise<RunReply>;
  close(): void;
}

export class Drawer {
  #open: () => Door;
  #door: Door | null = null;
  #sheets = $state.raw<CutSheets | null>(null);
  #failure = $state('');
  #isBusy = $state(false);
  #waiting: CutRequest | null = null;

  constructor(open: () => Door) {
    this.#open = open;
  }

  get sheets(): CutSheets | null {
    return this.#sheets;
  }
  /** What was asked for last is not drawn yet, or could not be: nobody is to cut by the sheets that are there. */
  get isStale(): boolean {
    return this.#isBusy || this.#failure !== '';
  }
  /** What was asked for last is not drawn yet. */
  get isBusy(): boolean {
    return this.#isBusy;
  }
  /** Why nothing could be drawn; empty where it could. */
  get failure(): string {
    return this.#failure;
  }

  ask(request: CutRequest): void {
    if (this.#isBusy) this.#waiting = request;
    else void this.#draw(request);
  }

  /** A stint, in the same worker. */
  run(request: RunRequest): Promise<RunReply> {
    return (this.#door ??= this.#open()).run(request);
  }

  close(): void {
    this.#door?.close();
    this.#door = null;
    this.#waiting = null;
  }

  async #draw(request: CutRequest): Promise<void> {
    this.#isBusy = true;
    try {
      const reply = await (this.#door ??= this.#open()).drawCut(request);
      this.#failure = reply.kind === 'failure' ? reply.message : '';
      if (reply.kind === 'cut') this.#sheets = reply;
    } catch (error) {
      this.#failure = error instanceof Error ? error.message : String(error);
      this.#door?.close();
      this.#door = null; // another one next time
    }
    const next = this.#waiting;
    this.#waiting = null;
    if (next) await this.#draw(next);
    else this.#isBusy = false;
  }
}
