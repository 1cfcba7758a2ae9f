/**
 * Keeps what follows from the scenario under the hand beyond its picture: first its safe spans, then how sure all that is.
 * Found in a worker of its own once the hand rests, left at once when it moves.
 */
import { untrack } from 'svelte';
import type {
  CornerSensitivity,
  NotFound,
  SafeSpan,
  Scenario,
  SensitivityReply,
  SpanReply,
  SpanRequest,
  Spread,
  SpreadReply,
  SpreadRequest,
} from '../../engine/index.ts';
import type { Alarm } from './engine-client.ts';
import { Kept } from './kept.svelte.ts';
import { isSameBut, isSameGround } from './span-ground.ts';

export interface AdviceDoor {
  findSpans(request: SpanRequest): Promise<SpanReply>;
  findSpread(request: SpreadRequest): Promise<SpreadReply>;
  findSensitivity(request: SpanRequest): Promise<SensitivityReply>;
  /** Ends a search at its next rest; its reply is "left". */
  leaveSearch(): void;
  close(): void;
}

/** The hand rests when nothing has changed for this long [ms] */
const REST_MS = 300;
/** A search that takes longer has lost its worker [ms] */
const PATIENCE_MS = 60_000;
/** How often a search is begun again on a fresh worker before it is given up. */
const LIVES = 2;
/** Draws behind the sentence, and where they start: the same scenario always gives the same count. */
const SAMPLE = { draws: 100, seed: 1 };

/** One search: what it looks for, how it asks, and what is said where it fails. */
interface Search {
  isKnown(scenario: Scenario): boolean;
  /** What is to be done with the answer, if it is still wanted then. */
  ask(door: AdviceDoor, scenario: Scenario): Promise<() => void>;
  fail(why: string): void;
}

function search<Reply extends { kind: string }, T>(
  kept: Kept<T>,
  missing: string,
  ask: (door: AdviceDoor, scenario: Scenario) => Promise<Reply | NotFound>,
  valueOf: (reply: Exclude<Reply, NotFound>) => T,
): Search {
  const fail = (why: string): void => kept.fail(why && `${missing}: ${why}.`);
  return {
    isKnown: (scenario) => kept.of(scenario) !== null,
    fail,
    async ask(door, scenario) {
      const reply = await ask(door, scenario);
      if (isNotFound(reply)) return () => reply.kind === 'failure' && fail(reply.message);
      return () => kept.keep(scenario, valueOf(reply as Exclude<Reply, NotFound>));
    },
  };
}

const isNotFound = (reply: { kind: string }): reply is NotFound =>
  reply.kind === 'left' || reply.kind === 'failure';

export class Adviser {
  /** A span does not depend on the blanking itself, so it stays while that is dragged. */
  #spans = new Kept<readonly SafeSpan[]>(isSameGround);
  #spread = new Kept<Spread>(isSameBut('name', 'purpose'));
  #sensitivity = new Kept<readonly CornerSensitivity[]>(isSameBut('name', 'purpose'));
  #searches: readonly Search[] = [
    search(
      this.#spans,
      'No safe span',
      (door, scenario): Promise<SpanReply> => door.findSpans({ scenario, driven: null }),
      ({ spans }) => spans,
    ),
    search(
      this.#spread,
      'Its doubt could not be computed',
      (door, scenario): Promise<SpreadReply> => door.findSpread({ scenario, driven: null, ...SAMPLE }),
      ({ spread }) => spread,
    ),
    search(
      this.#sensitivity,
      'What to measure first is not known',
      (door, scenario): Promise<SensitivityReply> => door.findSensitivity({ scenario, driven: null }),
      ({ corners }) => corners,
    ),
  ];
  #open: () => AdviceDoor;
  #alarm: Alarm;
  #door: AdviceDoor | null = null;
  #wanted: Scenario | null = null;
  #cancelRest: () => void = () => undefined;
  #cancelPatience: () => void = () => undefined;
  #deaths = 0;
  #round = 0;
  /** The search under way. */
  #current: Search | null = null;

  constructor(open: () => AdviceDoor, alarm: Alarm) {
    this.#open = open;
    this.#alarm = alarm;
  }

  /** The spans of a scenario, or null while they are not known. */
  spansOf(scenario: Scenario): readonly SafeSpan[] | null {
    return this.#spans.of(scenario);
  }
  /** The same, or why there are none in a sentence where the search has failed. */
  foundSpans(scenario: Scenario): readonly SafeSpan[] | string | null {
    return this.#spans.found(scenario);
  }
  foundSpread(scenario: Scenario): Spread | string | null {
    return this.#spread.found(scenario);
  }
  foundSensitivity(scenario: Scenario): readonly CornerSensitivity[] | string | null {
    return this.#sensitivity.found(scenario);
  }

  /** The scenario is now this one, and the page is busy with it or not. Any search under way makes room. */
  follow(scenario: Scenario, isBusy: boolean): void {
    // what is found must not call this again
    untrack(() => {
      this.#stop();
      this.#wanted = scenario;
      this.#deaths = 0;
      for (const each of this.#searches) each.fail('');
      if (!isBusy && this.#next()) this.#cancelRest = this.#alarm(REST_MS, () => this.#begin(this.#next()));
    });
  }

  close(): void {
    this.#stop();
    this.#door?.close();
    this.#door = null;
  }

  #stop(): void {
    this.#cancelRest();
    this.#cancelPatience();
    this.#cancelRest = this.#cancelPatience = () => undefined;
    this.#round += 1;
    if (this.#current) this.#door?.leaveSearch();
    this.#current = null;
  }

  /** The first search, or the first after another, whose answer is not there yet. */
  #next(after: Search | null = null): Search | null {
    const scenario = this.#wanted;
    const rest = this.#searches.slice(after ? this.#searches.indexOf(after) + 1 : 0);
    return (scenario && rest.find((each) => !each.isKnown(scenario))) ?? null;
  }

  #begin(next: Search | null): void {
    const scenario = this.#wanted;
    this.#current = next;
    if (!scenario || !next) return;
    const mine = this.#round;
    const door = (this.#door ??= this.#open());
    const cancelPatience = this.#alarm(PATIENCE_MS, () => this.#died(door, 'it gave no answer'));
    this.#cancelPatience = cancelPatience;
    next.ask(door, scenario).then(
      (take) => {
        cancelPatience();
        if (mine !== this.#round) return;
        take();
        this.#begin(this.#next(next));
      },
      (cause: unknown) => {
        cancelPatience();
        this.#died(door, cause instanceof Error ? cause.message : String(cause));
      },
    );
  }

  /** Whatever round the worker was asked in: with it goes the search that is under way now. */
  #died(door: AdviceDoor, cause: string): void {
    if (door !== this.#door) return;
    door.close();
    this.#door = null;
    const lost = this.#current;
    if (!lost) return;
    this.#round += 1;
    this.#deaths += 1;
    this.#current = null;
    if (this.#deaths <= LIVES) return this.#begin(lost);
    // what kills a worker thrice would kill the next
    for (const each of this.#searches.slice(this.#searches.indexOf(lost)))
      each.fail(`its worker stopped, ${cause}`);
  }
}
