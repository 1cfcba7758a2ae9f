/** The searches that a worker knows of: it holds those that began here, and runs for any of them. */
import { answering } from '../advise/answering.ts';
import { safeSpans } from '../advise/safe-span.ts';
import type { Ask, Outcome, Search } from '../advise/search.ts';
import { sensitivity } from '../advise/sensitivity.ts';
import { spread } from '../advise/spread.ts';
import { failureOf } from './failure.ts';
import type { Answer, Findings, Question, Sought, Step } from './protocol.ts';

interface Known {
  question: Question;
  /** Where it has run something here. */
  run: ReturnType<typeof answering> | null;
  /** Where it began here. */
  steps: Search<Findings[Sought]>['steps'] | null;
}

export class Searches {
  #known = new Map<number, Known>();

  learn(search: number, question: Question): void {
    this.#known.set(search, { question, run: null, steps: null });
  }

  forget(search: number): void {
    this.#known.delete(search);
  }

  advance(search: number, outcomes: readonly Outcome[][]): Step {
    const at = this.#known.get(search);
    if (!at) return { kind: 'failure', message: `no search ${search}` };
    try {
      const isNew = at.steps === null;
      const steps = (at.steps ??= begun(at.question));
      const step = isNew ? steps.next() : steps.next(outcomes);
      return step.done ? { kind: 'found', found: step.value } : { kind: 'asks', asks: step.value };
    } catch (error) {
      return failureOf(error);
    }
  }

  async answer(search: number, ask: Ask): Promise<Answer> {
    const at = this.#known.get(search);
    if (!at) return { kind: 'left' };
    const outcomes: Outcome[] = [];
    try {
      at.run ??= answering(at.question);
      for (const outcome of at.run(ask)) {
        outcomes.push(outcome);
        await breath();
        if (!this.#known.has(search)) return { kind: 'left' };
      }
      return { kind: 'outcomes', outcomes };
    } catch (error) {
      return failureOf(error);
    }
  }
}

function begun({ scenario, driven, sought, sample }: Question): Search<Findings[Sought]>['steps'] {
  if (sought === 'spans') return safeSpans(scenario, { driven }).steps;
  if (sought === 'sensitivity') return sensitivity(scenario, { driven }).steps;
  if (!sample) throw new Error('sample: null');
  return spread(scenario, sample, { driven }).steps;
}

/** Lets the messages that wait be heard. A timer would add milliseconds to every run. */
function breath(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}
