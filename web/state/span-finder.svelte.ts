/**
 * Keeps the safe span of the scenario under the hand: found in a worker of its own once the hand rests, left at once when
 * it moves. A span does not depend on the blanking itself, so it stays while that is dragged.
 */
import type { SafeSpan, Scenario, SpanReply, SpanRequest } from '../../engine/index.ts';
import type { Alarm } from './engine-client.ts';
import { isSameGround } from './span-ground.ts';

export interface SpanDoor {
  findSpans(request: SpanRequest): Promise<SpanReply>;
  /** Ends a search at its next rest; its reply is "left". */
  leaveSpans(): void;
  close(): void;
}

/** The hand rests when nothing has changed for this long [ms] */
const REST_MS = 300;
/** A search that takes longer has lost its worker [ms] */
const PATIENCE_MS = 60_000;
/** How often a search is begun again on a fresh worker before it is given up. */
const LIVES = 2;

export class SpanFinder {
  #open: () => SpanDoor;
  #alarm: Alarm;
  #door: SpanDoor | null = null;
  #found = $state.raw<{ scenario: Scenario; spans: SafeSpan[] } | null>(null);
  #failure = $state('');
  #compared: { found: object; scenario: Scenario; isSame: boolean } | null = null;
  #wanted: Scenario | null = null;
  #cancelRest: () => void = () => undefined;
  #cancelPatience: () => void = () => undefined;
  #deaths = 0;
  #round = 0;
  #isSearching = false;

  constructor(open: () => SpanDoor, alarm: Alarm) {
    this.#open = open;
    this.#alarm = alarm;
  }

  /** The spans of a scenario, or null while they are not known. */
  spansOf(scenario: Scenario): readonly SafeSpan[] | null {
    const found = this.#found;
    if (!found) return null;
    // several parts of the page ask for the same scenario in every frame
    if (this.#compared?.found !== found || this.#compared.scenario !== scenario) {
      this.#compared = { found, scenario, isSame: isSameGround(found.scenario, scenario) };
    }
    return this.#compared.isSame ? found.spans : null;
  }
  /** The same, or why there are none in a sentence where the search has failed. */
  found(scenario: Scenario): readonly SafeSpan[] | string | null {
    return this.spansOf(scenario) ?? (this.#failure || null);
  }

  /** The scenario is now this one, and the page is busy with it or not. Any search under way makes room. */
  follow(scenario: Scenario, isBusy: boolean): void {
    this.#stop();
    this.#wanted = scenario;
    this.#deaths = 0;
    this.#failure = '';
    if (!isBusy && !this.spansOf(scenario)) this.#cancelRest = this.#alarm(REST_MS, () => this.#search());
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
    if (this.#isSearching) this.#door?.leaveSpans();
    this.#isSearching = false;
  }

  #search(): void {
    const scenario = this.#wanted;
    if (!scenario) return;
    const mine = this.#round;
    this.#isSearching = true;
    const door = (this.#door ??= this.#open());
    const cancelPatience = this.#alarm(PATIENCE_MS, () => this.#died(door, 'it gave no answer'));
    this.#cancelPatience = cancelPatience;
    door.findSpans({ scenario, driven: null }).then(
      (reply) => {
        cancelPatience();
        if (mine === this.#round) this.#replied(scenario, reply);
      },
      (cause: unknown) => {
        cancelPatience();
        this.#died(door, cause instanceof Error ? cause.message : String(cause));
      },
    );
  }

  #replied(scenario: Scenario, reply: SpanReply): void {
    this.#isSearching = false;
    if (reply.kind === 'spans') this.#found = { scenario, spans: reply.spans };
    if (reply.kind === 'failure') this.#failure = `No safe span: ${reply.message}.`;
  }

  /** Whatever round the worker was asked in: with it goes the search that is under way now. */
  #died(door: SpanDoor, cause: string): void {
    if (door !== this.#door) return;
    door.close();
    this.#door = null;
    if (!this.#isSearching) return;
    this.#round += 1;
    this.#deaths += 1;
    this.#isSearching = false;
    if (this.#deaths <= LIVES) this.#search();
    else this.#failure = `No safe span: its worker stopped, ${cause}.`;
  }
}
