/** A trace file on its way in: read in a worker of its own, shown as understood, taken or refused by the person. */
import type { EngineDoor, TraceColumns, UnderstoodTrace } from '../../engine/index.ts';

/** Larger files are refused before they are read [bytes] */
const LARGEST = 50e6;

interface ReadTrace {
  understood: UnderstoodTrace;
  columns: TraceColumns;
}

interface ReaderDoor {
  readTrace: EngineDoor['readTrace'];
  close(): void;
}

export class TraceReader {
  #open: () => ReaderDoor;
  #name = $state('');
  #reading = $state.raw<ReadTrace | null>(null);
  #problems = $state.raw<readonly string[]>([]);
  #busy = $state(false);
  #latest = 0;

  constructor(open: () => ReaderDoor) {
    this.#open = open;
  }

  get name(): string {
    return this.#name;
  }
  get reading(): ReadTrace | null {
    return this.#reading;
  }
  get problems(): readonly string[] {
    return this.#problems;
  }
  get isBusy(): boolean {
    return this.#busy;
  }

  async open(file: Pick<File, 'name' | 'size' | 'arrayBuffer'>): Promise<void> {
    const mine = ++this.#latest;
    this.#name = file.name;
    this.#reading = null;
    this.#problems = [];
    if (file.size > LARGEST) {
      this.#problems = [`file: expected at most 50 MB, got ${Math.round(file.size / 1e6)} MB`];
      return;
    }
    this.#busy = true;
    const door = this.#open();
    try {
      const reading = await door.readTrace(file, {}, () => undefined);
      if (mine !== this.#latest) return;
      const { understood, columns, problems } = reading;
      if (understood && columns) this.#reading = { understood, columns };
      else this.#problems = understood?.question ? [...problems, understood.question.text] : problems;
    } catch (cause) {
      if (mine === this.#latest) this.#problems = [`file: could not be read, ${String(cause)}`];
    } finally {
      door.close();
      if (mine === this.#latest) this.#busy = false;
    }
  }

  refuse(problems: readonly string[]): void {
    this.#problems = problems;
  }

  /** Puts the file away; nothing of it stays. */
  close(): void {
    this.#latest += 1;
    this.#busy = false;
    this.#reading = null;
    this.#problems = [];
  }
}
