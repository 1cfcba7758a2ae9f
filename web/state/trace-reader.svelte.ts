/** A trace file on its way in: read in a worker of its own, shown as understood, corrected, taken or refused. */
import type { TraceChoices, TraceReading, TraceRole } from '../../engine/index.ts';
import { tooLarge } from '../../engine/scenario/file-size.ts';
import { browserAlarm } from './alarm.ts';
import type { Alarm } from './engine-client.ts';
import type { Correction, Memory } from './remembered.ts';
import { traceClient, type TraceClient, type TraceDoor } from './trace-client.ts';
import { changed, complete, isCorrected, lasting, withRole } from './trace-choices.ts';
import { fateOf } from './trace-recall.ts';

type TraceFile = Blob & { name: string };

/** Starts of laps that were typed and cannot be used. */
interface Mistyped {
  text: string;
  /** One sentence for each bad entry. */
  errors: readonly string[];
}

/** A remembered correction that this file was not read with. */
interface LeftOut {
  at_ms: number;
  /** For good, and not for this file alone. */
  isDropped: boolean;
}

export class TraceReader {
  #client: TraceClient;
  #memory: Memory;
  #now: () => number;
  #file: TraceFile | null = null;
  /** Of the file as it is guessed: corrections are kept under it, whatever they make of the header. */
  #fingerprint: string | null = null;
  /** What the reading that is shown was read with. */
  #shownBy: TraceChoices = {};
  /** What the memory holds, as text. */
  #kept = '';
  #latest = 0;
  #name = $state('');
  #choices = $state.raw<TraceChoices>({});
  #reading = $state.raw<TraceReading | null>(null);
  #refused = $state.raw<readonly string[]>([]);
  #progress = $state<number | null>(null);
  #failure = $state('');
  #correctedAt_ms = $state<number | null>(null);
  #leftOut = $state.raw<LeftOut | null>(null);
  #mistyped = $state.raw<Mistyped | null>(null);
  #others = $state.raw<readonly string[]>([]);
  #isForgetful = $state(false);

  constructor(open: () => TraceDoor, memory: Memory, alarm: Alarm = browserAlarm, now = () => Date.now()) {
    this.#client = traceClient(open, alarm);
    this.#memory = memory;
    this.#now = now;
  }

  get name(): string {
    return this.#name;
  }
  /** What was said so far; ahead of the reading by the read under way. */
  get choices(): TraceChoices {
    return this.#choices;
  }
  get reading(): TraceReading | null {
    return this.#reading;
  }
  /** What is in the way of taking the trace, one sentence each. */
  get problems(): readonly string[] {
    return this.#refused.length > 0 ? this.#refused : (this.#reading?.problems ?? []);
  }
  /** Share of the file that was read; null when none is being read. */
  get progress(): number | null {
    return this.#progress;
  }
  get isBusy(): boolean {
    return this.#progress !== null;
  }
  /** Why the last read came to nothing; it can be tried again. */
  get failure(): string {
    return this.#failure;
  }
  /** When the corrections were made that this file was read with at first; null where there were none. */
  get correctedAt_ms(): number | null {
    return this.#correctedAt_ms;
  }
  get leftOut(): LeftOut | null {
    return this.#leftOut;
  }
  /** While there are any, the starts before them hold. */
  get mistyped(): Mistyped | null {
    return this.#mistyped;
  }
  /** Names of files that came with this one and are not read. */
  get others(): readonly string[] {
    return this.#others;
  }
  /** Corrections cannot be kept: the storage refuses. */
  get isForgetful(): boolean {
    return this.#isForgetful;
  }
  get isOpen(): boolean {
    return this.isBusy || this.#reading !== null || this.#failure !== '' || this.#refused.length > 0;
  }

  async open(file: TraceFile, others: readonly string[] = []): Promise<void> {
    this.close();
    this.#file = file;
    this.#name = file.name;
    this.#others = others;
    const problem = tooLarge(file.size);
    if (problem) return this.refuse([problem]);
    const mine = this.#latest;
    const guessed = await this.#read({});
    if (!guessed) return;
    this.#fingerprint = guessed.understood?.fingerprint ?? null;
    const known = await this.#recalled();
    if (mine !== this.#latest) return;
    if (!known) return this.#show(guessed, {});
    await this.#apply(known, guessed);
  }

  /** Reads again with a change. */
  async choose(change: TraceChoices): Promise<void> {
    if (change.lapStarts_s ?? change.lapsBy) this.#mistyped = null;
    await this.#correct(changed(this.#choices, change));
  }

  /** Starts of laps that cannot be used: those before them hold until they are mended. */
  mistype(text: string, errors: readonly string[]): void {
    this.#mistyped = { text, errors };
  }

  async chooseRole(index: number, role: TraceRole | null): Promise<void> {
    const understood = this.#reading?.understood;
    if (understood) await this.#correct(withRole(understood, this.#choices, index, role));
  }

  /** Reads the file again as if nothing had ever been said about its kind. */
  async forget(): Promise<void> {
    this.#mistyped = null;
    await Promise.all([this.#readAgain({}), this.#drop()]);
  }

  /** After a failure: the same file, with all that was said. */
  async retry(): Promise<void> {
    if (!this.#file) return;
    if (this.#reading) await this.#correct(this.#choices);
    else await this.open(this.#file, this.#others);
  }

  /** Ends a read under way; what was shown before stays as it was. */
  stop(): void {
    if (!this.#reading) return this.close();
    this.#client.stop();
    this.#choices = this.#shownBy;
    this.#progress = null;
  }

  /** The scenario would not have it. */
  refuse(problems: readonly string[]): void {
    this.#refused = problems;
  }

  /** Puts the file away; nothing of it stays. */
  close(): void {
    this.#latest += 1;
    this.#client.close();
    this.#file = this.#fingerprint = this.#reading = this.#progress = this.#correctedAt_ms = null;
    this.#choices = this.#shownBy = {};
    this.#kept = '';
    this.#leftOut = this.#mistyped = null;
    this.#refused = this.#others = [];
    this.#failure = '';
  }

  /** What made a trace that can be run, and holds for the next file of this kind too, is remembered. */
  async #correct(choices: TraceChoices): Promise<void> {
    if ((await this.#readAgain(choices)) && this.#reading?.columns) await this.#keep(lasting(choices));
  }

  /** Reads as it was corrected before, unless the file is better read without. */
  async #apply(known: Correction, guessed: TraceReading): Promise<void> {
    const choices = (this.#choices = complete(known.choices));
    this.#kept = JSON.stringify(known.choices);
    const recalled = await this.#read(choices);
    if (!recalled) return;
    const fate = fateOf(guessed, recalled);
    if (fate === 'used') {
      this.#correctedAt_ms = known.at_ms;
      return this.#show(recalled, choices);
    }
    this.#show(guessed, (this.#choices = {}));
    const isDropped = fate === 'dropped';
    const dropped = isDropped ? this.#drop() : null;
    this.#leftOut = { at_ms: known.at_ms, isDropped };
    await dropped;
  }

  async #drop(): Promise<void> {
    const fingerprint = this.#fingerprint;
    this.#correctedAt_ms = this.#leftOut = null;
    this.#kept = '';
    if (fingerprint !== null) await this.#tried(() => this.#memory.forget(fingerprint), undefined);
  }

  /** Whether these choices were read and are shown. */
  async #readAgain(said: TraceChoices): Promise<boolean> {
    const choices = (this.#choices = complete(said));
    const reading = await this.#read(choices);
    if (reading) this.#show(reading, choices);
    return reading !== null;
  }

  /** Null when it was overtaken, stopped, or failed. */
  async #read(choices: TraceChoices): Promise<TraceReading | null> {
    if (!this.#file) return null;
    this.#failure = '';
    this.#refused = [];
    this.#progress = 0;
    const outcome = await this.#client.read(this.#file, choices, (share) => (this.#progress = share));
    if (outcome.kind === 'stopped') return null;
    if (outcome.kind === 'read') return outcome.reading;
    this.#progress = null;
    this.#failure = `Reading stopped twice: ${outcome.cause}. Nothing you entered is lost.`;
    return null;
  }

  #show(reading: TraceReading, choices: TraceChoices): void {
    this.#progress = null;
    this.#reading = reading;
    this.#shownBy = choices;
  }

  async #recalled(): Promise<Correction | null> {
    const fingerprint = this.#fingerprint;
    return fingerprint === null ? null : this.#tried(() => this.#memory.recall(fingerprint), null);
  }

  async #keep(choices: TraceChoices): Promise<void> {
    const fingerprint = this.#fingerprint;
    const text = JSON.stringify(choices);
    if (fingerprint === null || text === this.#kept || !isCorrected(choices)) return;
    this.#kept = text;
    this.#leftOut = null;
    const correction = { choices, at_ms: this.#now() };
    await this.#tried(() => this.#memory.keep(fingerprint, correction), undefined);
  }

  /** Storage may be denied or full: then nothing is remembered, and that is all. */
  async #tried<T>(act: () => Promise<T>, otherwise: T): Promise<T> {
    try {
      return await act();
    } catch {
      this.#isForgetful = true;
      return otherwise;
    }
  }
}
