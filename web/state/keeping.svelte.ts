/** Keeps the sheet in the browser while it is worked on, in one tab at a time, and brings back what was kept. */
import type { Scenario } from '../../engine/index.ts';
import { defaultScenario } from '../../engine/scenario/default-scenario.ts';
import { checkScenario } from '../../engine/scenario/parse.ts';
import { browserAlarm } from './alarm.ts';
import { isEvent } from './event-part.ts';
import type { Step } from './history.ts';
import { Keeper } from './keeper.ts';
import { keptSheet } from './kept-sheet.svelte.ts';
import { keepSheet, recallSheet, type KeptSheet, type Place } from './kept-storage.ts';
import { takeOver, takeTurn } from './only-tab.ts';
import type { Opening } from './opening.ts';
import { withPin } from './pins.svelte.ts';
import type { Session, Sheet } from './session.svelte.ts';
import type { SheetActs } from './sheet-acts.svelte.ts';
import { readInput } from './sheet-file.ts';

/** Why the sheet is not kept, in a sentence, and in few words. */
interface Unkept {
  words: string;
  few: string;
  /** Another tab has it, and this one may take it from there. */
  isElsewhere: boolean;
}

const unkept = (words: string, isElsewhere = false): Unkept => ({ words, few: 'Not kept', isElsewhere });

const ELSEWHERE = unkept('The sheet is open in another tab: this one is not kept.', true);
const TAKEN = unkept('Another tab keeps the sheet now: this one is not kept any more.', true);
const DENIED = unkept(
  'Nothing is kept: this browser does not let the page store anything. Save a file instead.',
);
const FULL = unkept('Nothing more is kept: the storage of the browser is full. Save a file instead.');

/** How long a storage may take that the page did not wait for [ms] */
const PATIENCE_MS = 10_000;
/** Steps of either direction that are kept. */
const MOST_STEPS = 50;

export class Keeping {
  #opening: Opening;
  #session: Session;
  #acts: SheetActs;
  #unkept = $state.raw<Unkept | null>(null);
  #isReady = $state(false);
  #isNew = false;
  #keeper = this.#newKeeper();
  #unreadable = $state.raw<unknown>(null);

  constructor(opening: Opening, session: Session, acts: SheetActs) {
    this.#opening = opening;
    this.#session = session;
    this.#acts = acts;
  }

  get unkept(): Unkept | null {
    return this.#unkept;
  }
  /** What was kept is here, and changes are written from now on. */
  get isReady(): boolean {
    return this.#isReady;
  }
  /** What an earlier version kept and this one cannot read; null: nothing. */
  get unreadable(): unknown {
    return this.#unreadable;
  }

  /** What is shown is not what was kept: it is to be written. */
  get isNew(): boolean {
    return this.#isNew;
  }

  async begin(): Promise<void> {
    const { link } = this.#opening;
    const kept = this.#opening.kept === undefined ? await this.#late() : this.#opening.kept;
    if (link) this.#acts.sayLinked(link);
    const isTouched = this.#session.history.past.length > 0;
    this.#bringBack(kept);
    if (this.#unkept) return;
    const { history: brought } = this.#session;
    if (!(await takeTurn(() => this.#lost()))) return this.#not(ELSEWHERE);
    if (kept) keptSheet.kept(kept.at_ms);
    // loaded again, the page shows what became of the link's sheet
    if (link) history.replaceState(null, '', location.pathname + location.search);
    // what was done before this was ready is kept as well
    this.#isNew ||= isTouched || this.#session.history !== brought;
    this.#isReady = true;
  }

  /** Something of the sheet has changed. */
  change(place: () => Place): void {
    if (this.#isReady) this.#keeper.change(() => this.#sheet(place()));
  }

  /** The page may be gone in a moment. */
  flush(): void {
    this.#keeper.flush();
  }

  /** Keeps what is in this tab, in the place of another's. */
  async insist(place: () => Place): Promise<void> {
    if (!(await takeOver(() => this.#lost()))) return;
    this.#unkept = null;
    this.#keeper = this.#newKeeper();
    this.#isReady = true;
    this.change(place);
    this.flush();
  }

  #newKeeper(): Keeper<KeptSheet> {
    return new Keeper<KeptSheet>({
      write: keepSheet,
      kept: ({ at_ms }) => {
        this.#unkept = null;
        keptSheet.kept(at_ms);
      },
      failed: (cause) => this.#not(isFull(cause) ? FULL : DENIED),
      alarm: browserAlarm,
      now: Date.now,
    });
  }

  #sheet(place: Place): KeptSheet {
    const { scenario, pins, event, history } = this.#session;
    return {
      at_ms: Date.now(),
      scenario,
      past: history.past.slice(-MOST_STEPS),
      future: history.future.slice(-MOST_STEPS),
      pins: pins.map((pin) => pin.scenario),
      event,
      place,
    };
  }

  /** The page did not wait for what was kept: it comes now, as a step. */
  async #late(): Promise<KeptSheet | null> {
    try {
      const kept = await recallSheet(PATIENCE_MS);
      if (!kept || this.#opening.link?.ok || !checkScenario(kept.scenario).ok) return kept;
      this.#session.replace(kept.scenario, 'what was kept');
      this.#acts.say('What was kept came late and is here now. Undo brings back what was here.');
      return kept;
    } catch {
      this.#not(DENIED);
      return null;
    }
  }

  #bringBack(kept: KeptSheet | null): void {
    const isLinked = this.#opening.link?.ok === true;
    this.#isNew = isLinked;
    const isRight = (scenario: Scenario): boolean => checkScenario(scenario).ok;
    if (kept && !isRight(kept.scenario)) return this.#bringOld(kept);
    const pins = listOf<Scenario>(kept?.pins).filter(isRight);
    if (pins.length > 0) void this.#session.holdPins(pins);
    if (kept?.event && isEvent(kept.event)) this.#session.holdEvent(kept.event);
    const past = listOf<Step<Sheet>>(kept?.past);
    if (!isLinked) return this.#session.remember({ past, future: listOf(kept?.future) });
    // undo leads from the link's sheet to the one that was here
    const state = { scenario: kept?.scenario ?? defaultScenario(), pins: pins.reduce(withPin, []) };
    this.#session.remember({ past: [...past, { name: 'link', key: null, state }], future: [] });
  }

  /** Of another version: brought to this one, or left for a file. */
  #bringOld({ scenario }: KeptSheet): void {
    this.#isNew = true;
    const read = readInput(scenario);
    if (read.ok) {
      if (!this.#opening.link?.ok) this.#session.replace(read.scenario, 'what was kept');
      this.#acts.say('What an earlier version kept was brought to this one.', read.notes);
    } else {
      this.#unreadable = scenario;
      this.#acts.say('What was kept here cannot be read by this version.', read.problems, true);
    }
  }

  #lost(): void {
    this.#keeper.stop();
    this.#isReady = false;
    this.#not(TAKEN);
  }

  #not(why: Unkept): void {
    this.#unkept = why;
    keptSheet.failed(why.few);
  }
}

/** Another version may have kept something else. */
const listOf = <T>(kept: unknown): readonly T[] => (Array.isArray(kept) ? (kept as T[]) : []);

const isFull = (cause: unknown): boolean =>
  cause instanceof DOMException && cause.name === 'QuotaExceededError';
