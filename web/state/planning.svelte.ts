/**
 * Plans an event when it is asked to: which panels to bring, then a map of conditions with them, then how sure each session is. By the pool
 * of workers that the stint's page uses, which goes first, and grants one of them while the hand moves there.
 */
import type { ConditionsMap, Findings, Plan, Question, Scenario, Sought } from '../../engine/index.ts';
import { planGround } from '../../engine/scenario/plan-ground.ts';
import type { Predicted } from '../display/predicted-words.ts';
import { mapAsked, WEIGHING, type DownAxis } from './map-axes.ts';
import { likelyDay, sessionChanges } from './session-day.ts';
import { checks } from './checks.ts';
import type { Finder } from './finder.ts';
import type { EventPart } from './event-part.ts';

export interface Planned {
  scenario: Scenario;
  event: EventPart;
  axis: DownAxis;
  /** What the stint's phases said and the sessions say now. */
  left: readonly string[];
  map: ConditionsMap;
  plan: Plan;
  predicted: readonly (Predicted | null)[];
}

export interface Progress {
  what: string;
  done: number;
  asked: number;
}

/** Draws of a session's prediction. */
export const DRAWS = 40;
/** How often progress is told at most [ms] */
const TELL_MS = 250;

class Left extends Error {}

export class Planning {
  #finder: Finder;
  #now: () => number;
  #planned = $state.raw<Planned | null>(null);
  #progress = $state.raw<Progress | null>(null);
  #failure = $state('');
  #end: AbortController | null = null;

  constructor(finder: Finder, now: () => number) {
    this.#finder = finder;
    this.#now = now;
  }

  /** The last plan that was finished. */
  get planned(): Planned | null {
    return this.#planned;
  }
  /** null: nothing is under way. */
  get progress(): Progress | null {
    return this.#progress;
  }
  get failure(): string {
    return this.#failure;
  }

  cancel(): void {
    this.#end?.abort();
    this.#end = null;
    this.#progress = null;
  }

  async begin(driven: Scenario, event: EventPart, axis: DownAxis): Promise<void> {
    this.cancel();
    this.#failure = '';
    const end = (this.#end = new AbortController());
    try {
      const planned = await this.#all(driven, event, axis, end.signal);
      if (end.signal.aborted) return;
      this.#planned = planned;
    } catch (error) {
      if (end.signal.aborted) return;
      this.#failure = `The event could not be planned: ${(error as Error).message}. Try again.`;
    }
    this.#end = null;
    this.#progress = null;
  }

  async #all(driven: Scenario, event: EventPart, axis: DownAxis, signal: AbortSignal): Promise<Planned> {
    const { scenario, left } = planGround(driven);
    const find = <What extends Sought>(
      what: string,
      question: Omit<Question<What>, 'driven'>,
    ): Promise<Findings[What]> => this.#find(what, { ...question, driven: scenario }, signal);
    const plan = await find<'plan'>('Sets of panels', { sought: 'plan', scenario, sample: null, event });
    const sets = plan.axles.map(({ axle, panels }) => ({ axle, panels }));
    const map = await find<'conditions'>('Map of conditions', {
      sought: 'conditions',
      scenario: { ...scenario, traffic: { ...scenario.traffic, gap_m: null, gap_s: null } },
      sample: null,
      map: { ...mapAsked(event.sessions, axis), sample: WEIGHING, sets },
    });
    const predicted: (Predicted | null)[] = [];
    for (const [s, session] of event.sessions.entries()) {
      const day = likelyDay(plan, s);
      const parsed = day && checks().override(scenario, sessionChanges(scenario, plan, day));
      if (!day || !parsed?.ok) {
        predicted.push(null);
        continue;
      }
      const forecast = await find<'session'>(session.name, {
        sought: 'session',
        scenario: parsed.scenario,
        sample: { draws: DRAWS, seed: 1, sensor: event.sensor ?? null },
      });
      predicted.push({ panels: day.panels, forecast });
    }
    return { scenario: driven, event, axis, left, map, plan, predicted };
  }

  async #find<What extends Sought>(
    what: string,
    question: Question<What>,
    signal: AbortSignal,
  ): Promise<Findings[What]> {
    let told_ms = -Infinity;
    this.#progress = { what, done: 0, asked: 0 };
    const reply = await this.#finder.find(question, {
      signal,
      canWait: true,
      progress: (done, asked) => {
        if (signal.aborted || this.#now() - told_ms < TELL_MS) return;
        told_ms = this.#now();
        this.#progress = { what, done, asked };
      },
    });
    if (reply.kind === 'found') return reply.found;
    throw reply.kind === 'left' ? new Left('it was left') : new Error(reply.message);
  }
}
