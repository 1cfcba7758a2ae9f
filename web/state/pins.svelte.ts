/** Runs that are held beside the one under the hand: three at most, the oldest makes room for a fourth. */
import type { Scenario, StintResult } from '../../engine/index.ts';
import type { OpenDoor } from './engine-client.ts';

/** A finished run: the picture and the scenario it is the picture of. */
export interface Run {
  scenario: Scenario;
  result: StintResult;
}

/** What is held: of which scenario, and which of the dashes its line has for as long as it is held. */
export interface Pin {
  scenario: Scenario;
  dash: number;
}

export type PinnedStint = Run & Pin;

const MOST_PINS = 3;
/** Kept for pins that undo may bring back; what is older is run again. */
const MOST_RUNS = 8;

/** Held as well, with the first dash that is free; the oldest goes where there is no room. */
export function withPin(pins: readonly Pin[], scenario: Scenario): Pin[] {
  const kept = pins.filter((pin) => pin.scenario !== scenario).slice(1 - MOST_PINS);
  const free = [0, 1, 2].find((dash) => kept.every((pin) => pin.dash !== dash)) ?? 0;
  return [...kept, { scenario, dash: free }];
}

export class Pins {
  #held = $state.raw<readonly Pin[]>([]);
  #known = $state.raw<readonly Run[]>([]);
  #runs = $derived(
    this.#held.flatMap((pin): PinnedStint[] => {
      const run = this.#runOf(pin);
      return run ? [{ ...pin, ...run }] : [];
    }),
  );
  #open: () => OpenDoor;

  constructor(open: () => OpenDoor) {
    this.#open = open;
  }

  get held(): readonly Pin[] {
    return this.#held;
  }
  /** Those whose run is there. */
  get runs(): readonly PinnedStint[] {
    return this.#runs;
  }

  /** What is known of a scenario already. */
  keep(run: Run): void {
    this.#known = [...this.#known.filter((each) => each.scenario !== run.scenario), run].slice(-MOST_RUNS);
  }

  /** Holds these. Runs those that are not known, each beside the page's own, one after the other. */
  async hold(pins: readonly Pin[]): Promise<void> {
    this.#held = pins;
    const missing = pins.filter((pin) => !this.#runOf(pin));
    if (missing.length === 0) return;
    const door = this.#open();
    try {
      for (const [id, { scenario }] of missing.entries()) {
        const reply = await door.run({ id, scenario, driven: null });
        if (reply.kind === 'result') this.keep({ scenario, result: reply.result });
      }
    } catch {
      // a pin whose run cannot be had is not drawn; the next change of pins asks again
    }
    door.close();
  }

  #runOf({ scenario }: Pin): Run | undefined {
    return this.#known.find((run) => run.scenario === scenario);
  }
}
