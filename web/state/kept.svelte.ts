/** The last thing found out about a scenario, for as long as what it stands on is the same. */
import type { Scenario } from '../../engine/index.ts';

export class Kept<T> {
  #isSame: (a: Scenario, b: Scenario) => boolean;
  #kept = $state.raw<{ scenario: Scenario; value: T } | null>(null);
  #failure = $state('');
  #compared: { kept: object; scenario: Scenario; isSame: boolean } | null = null;

  constructor(isSame: (a: Scenario, b: Scenario) => boolean) {
    this.#isSame = isSame;
  }

  /** What is known of a scenario; null while it is not. */
  of(scenario: Scenario): T | null {
    const kept = this.#kept;
    if (!kept) return null;
    // several parts of the page ask for the same scenario in every frame
    if (this.#compared?.kept !== kept || this.#compared.scenario !== scenario) {
      this.#compared = { kept, scenario, isSame: this.#isSame(kept.scenario, scenario) };
    }
    return this.#compared.isSame ? kept.value : null;
  }

  /** The same, or why there is none in a sentence where the search has failed. */
  found(scenario: Scenario): T | string | null {
    return this.of(scenario) ?? (this.#failure || null);
  }

  keep(scenario: Scenario, value: T): void {
    this.#kept = { scenario, value };
  }

  /** Says why nothing will be found; an empty text lets it be looked for again. */
  fail(why: string): void {
    this.#failure = why;
  }
}
