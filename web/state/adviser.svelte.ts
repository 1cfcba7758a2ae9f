/**
 * Keeps what follows from the scenario under the hand beyond its picture: first its safe spans, then how sure all that is.
 * Looked for in workers of their own once the hand rests, and left at once when it moves to another question.
 */
import { untrack } from 'svelte';
import type {
  BlankingMap,
  CornerSensitivity,
  Findings,
  Question,
  SafeSpan,
  Sample,
  Scenario,
  Sought,
  Spread,
} from '../../engine/index.ts';
import type { Alarm } from './engine-client.ts';
import type { Finder, Watch } from './finder.ts';
import { Kept } from './kept.svelte.ts';
import { isSameBut, isSameDoubtedGround, isSameGround } from './span-ground.ts';

/** The hand rests when nothing has changed for this long [ms] */
const REST_MS = 300;
/** How often it is told at most how far a search is [ms] */
const TELL_MS = 500;
/** Draws behind the sentence, and where they start: the same scenario always gives the same count. */
const SAMPLE: Sample = { draws: 100, seed: 1 };

/** Whether what was found for one scenario holds for the other. */
type IsSame = (a: Scenario, b: Scenario) => boolean;

/** One search: what it looks for, how it asks, and what is said where it fails. */
interface Search {
  isSame: IsSame;
  /** Whether the answer is there, or that there is none: what could not be found waits until something changes. */
  isSettled(scenario: Scenario): boolean;
  /** What is to be done with the answer, if it is still wanted then. */
  ask(finder: Finder, scenario: Scenario, watch: Watch): Promise<() => void>;
  fail(why: string): void;
}

/** A sample may hang on what was found before it: it is made when it is asked for. */
type Asking<What extends Sought> = Pick<Question<What>, 'sought'> & {
  sample: (scenario: Scenario) => Question<What>['sample'];
  isSame: IsSame;
};

function search<What extends Sought>(
  kept: Kept<Findings[What]>,
  missing: string,
  { isSame, sought, sample }: Asking<What>,
): Search {
  const fail = (why: string): void => kept.fail(why && `${missing}: ${why}.`);
  return {
    isSame,
    isSettled: (scenario) => kept.found(scenario) !== null,
    fail,
    async ask(finder, scenario, watch) {
      const question = { sought, sample: sample(scenario), scenario, driven: null };
      const reply = await finder.find<What>(question, watch);
      if (reply.kind === 'found') return () => kept.keep(scenario, reply.found);
      return () => reply.kind === 'failure' && fail(reply.message || 'no reason is known');
    },
  };
}

const isSameDoubt = isSameBut('name', 'purpose');

export class Adviser {
  /** A span does not depend on the blanking itself, so it stays while that is dragged. */
  #spans = new Kept<SafeSpan[]>(isSameGround);
  /** Nor does the map of all blankings. */
  #blankings = new Kept<BlankingMap[]>(isSameGround);
  /** Nor do the spans with what the draws propose; those do depend on what is in doubt. */
  #weighed = new Kept<SafeSpan[]>(isSameDoubtedGround);
  #spread = new Kept<Spread>(isSameDoubt);
  #sensitivity = new Kept<CornerSensitivity[]>(isSameDoubt);
  #spreading = search(this.#spread, 'Its doubt could not be computed', {
    sought: 'spread',
    sample: () => SAMPLE,
    isSame: isSameDoubt,
  });
  #mapping = search(this.#blankings, 'All blankings could not be run', {
    sought: 'blankings',
    sample: () => null,
    isSame: isSameGround,
  });
  #weighing = search(this.#weighed, 'How sure that is could not be computed', {
    sought: 'weighed',
    sample: (scenario) => ({ ...SAMPLE, spans: this.#spans.of(scenario) ?? [] }),
    isSame: isSameDoubtedGround,
  });
  #searches: readonly Search[] = [
    search(this.#spans, 'No safe span', { sought: 'spans', sample: () => null, isSame: isSameGround }),
    this.#mapping,
    this.#spreading,
    {
      ...this.#weighing,
      isSettled: (scenario) => this.#spans.of(scenario) === null || this.#weighing.isSettled(scenario),
    },
    search(this.#sensitivity, 'What to measure first is not known', {
      sought: 'sensitivity',
      sample: () => null,
      isSame: isSameDoubt,
    }),
  ];
  #finder: Finder;
  #alarm: Alarm;
  #wanted: Scenario | null = null;
  #isResting = false;
  #isMapInView = false;
  #cancelRest: () => void = () => undefined;
  #cancelTelling: (() => void) | null = null;
  #done = 0;
  /** The search under way, and the scenario it was begun for. */
  #current: { search: Search; scenario: Scenario; end: AbortController } | null = null;
  #told = $state(0);

  constructor(finder: Finder, alarm: Alarm) {
    this.#finder = finder;
    this.#alarm = alarm;
  }

  /** The spans of a scenario, with what the draws propose once they are made, or null while they are not known. */
  spansOf(scenario: Scenario): readonly SafeSpan[] | null {
    return this.#weighed.of(scenario) ?? this.#spans.of(scenario);
  }
  /** The same, or why there are none in a sentence where the search has failed. */
  foundSpans(scenario: Scenario): readonly SafeSpan[] | string | null {
    return this.spansOf(scenario) ?? this.#spans.found(scenario);
  }
  /** Those with draws alone, or why there are none. */
  foundWeighed(scenario: Scenario): readonly SafeSpan[] | string | null {
    return this.#weighed.found(scenario);
  }
  /** The map of every corner that has a duct, for as long as it is in view. */
  foundBlankings(scenario: Scenario): readonly BlankingMap[] | string | null {
    return this.#blankings.found(scenario);
  }
  foundSpread(scenario: Scenario): Spread | string | null {
    return this.#spread.found(scenario);
  }
  foundSensitivity(scenario: Scenario): readonly CornerSensitivity[] | string | null {
    return this.#sensitivity.found(scenario);
  }
  /** How many draws of how many are done, once they have been under way for a while; else null. */
  get drawn(): { done: number; of: number } | null {
    return this.#told > 0 ? { done: this.#told, of: SAMPLE.draws } : null;
  }

  /**
   * The scenario is now this one, and the page is busy with it or not. A search that is about another scenario makes room; one
   * that is still wanted goes on in one worker until the hand rests.
   */
  follow(scenario: Scenario, isBusy: boolean): void {
    // what is found must not call this again
    untrack(() => {
      const { search, scenario: asked } = this.#current ?? {};
      if (!search || !asked || !search.isSame(asked, scenario)) this.#leave();
      this.#cancelRest();
      this.#isResting = false;
      this.#finder.limit(1);
      this.#wanted = scenario;
      for (const each of this.#searches) each.fail('');
      this.#cancelRest = isBusy ? () => undefined : this.#alarm(REST_MS, () => this.#rest());
    });
  }

  /** All blankings are looked at now: who looks at them is served before the draws. Returns the way to end it. */
  viewBlankings(): () => void {
    // what is found must not call this again
    untrack(() => {
      this.#isMapInView = true;
      this.#mapping.fail('');
      const next = this.#next();
      if (next === this.#mapping && this.#current?.search !== next) this.#turnTo(next);
    });
    return () => {
      this.#isMapInView = false;
      if (this.#current?.search === this.#mapping) this.#turnTo(this.#next());
    };
  }

  close(): void {
    this.#leave();
    this.#cancelRest();
    this.#finder.close();
  }

  #rest(): void {
    this.#isResting = true;
    this.#finder.limit();
    if (!this.#current) this.#begin(this.#next());
  }

  #leave(): void {
    this.#current?.end.abort();
    this.#current = null;
    this.#cancelTelling?.();
    this.#cancelTelling = null;
    this.#told = 0;
  }

  /** One run of them is the likely one. */
  #drew(runs: number): void {
    this.#done = runs - 1;
    this.#cancelTelling ??= this.#alarm(TELL_MS, () => {
      this.#cancelTelling = null;
      this.#told = this.#done;
    });
  }

  /** The first search whose answer is not there yet: the hand may have moved on while a later one was under way. */
  #next(): Search | null {
    const scenario = this.#wanted;
    const isWanted = (each: Search): boolean => each !== this.#mapping || this.#isMapInView;
    return (scenario && this.#searches.find((each) => isWanted(each) && !each.isSettled(scenario))) ?? null;
  }

  /** Leaves what is under way for another search. */
  #turnTo(search: Search | null): void {
    this.#leave();
    if (this.#isResting) this.#begin(search);
  }

  #begin(search: Search | null): void {
    const scenario = this.#wanted;
    if (!scenario || !search) return;
    const current = { search, scenario, end: new AbortController() };
    this.#current = current;
    const progress = (done: number): void => {
      if (search === this.#spreading && current === this.#current) this.#drew(done);
    };
    void search.ask(this.#finder, scenario, { signal: current.end.signal, progress }).then((take) => {
      if (current !== this.#current) return;
      this.#leave();
      take();
      if (this.#isResting) this.#begin(this.#next());
    });
  }
}
