/** The searches that a worker knows of: it holds those that began here, and runs for any of them. */
import { answering } from '../advise/answering.ts';
import { bracketed, type LeastOf } from '../advise/bracket.ts';
import type { Ask, Outcome } from '../advise/search.ts';
import type { ForecastAsked } from '../advise/session-forecast.ts';
import { isHelpless } from '../advise/span.ts';
import type { Weighing } from '../advise/weighed.ts';
import { blankOf } from '../duct/blank-keys.ts';
import { cornersOf, type Corner } from '../stint/corners.ts';
import { failureOf } from './failure.ts';
import type { Answer, Findings, Question, Sought, Step } from './protocol.ts';

type Begun = AsyncGenerator<readonly Ask[], Findings[Sought], readonly Outcome[][]>;

interface Known {
  question: Question;
  /** Where it has run something here. */
  run: ReturnType<typeof answering> | null;
  /** Where it began here. */
  steps: Begun | null;
}

export class Searches {
  #known = new Map<number, Known>();

  learn(search: number, question: Question): void {
    this.#known.set(search, { question, run: null, steps: null });
  }

  forget(search: number): void {
    this.#known.delete(search);
  }

  async advance(search: number, outcomes: readonly Outcome[][]): Promise<Step> {
    const at = this.#known.get(search);
    if (!at) return { kind: 'failure', message: `no search ${search}` };
    try {
      const step = await (at.steps ??= begun(at.question)).next(outcomes);
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
      at.run ??= await runsFor(at.question);
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

/** What the safe span does without, such as the schema, is loaded when it is needed. */
async function* begun(question: Question): Begun {
  const { scenario, driven, sought, sample, map, event } = question;
  if (sought === 'spans') {
    const spans = yield* bracketed(scenario, await leastFor(scenario));
    if (!spans.some(isHelpless)) return spans;
    const { withRemedies } = await import('../advise/remedies.ts');
    return yield* withRemedies(scenario, spans);
  }
  if (sought === 'blankings') {
    const { blankings } = await import('../advise/blankings.ts');
    return yield* blankings(scenario, { driven }).steps;
  }
  if (sought === 'sensitivity') {
    const { sensitivity } = await import('../advise/sensitivity.ts');
    return yield* sensitivity(scenario, { driven }).steps;
  }
  if (sought === 'weighed') {
    const { weighed } = await import('../advise/weighed.ts');
    return yield* weighed(scenario, sample as Weighing, { driven }).steps;
  }
  if (sought === 'conditions') {
    if (!map) throw new Error('map: undefined');
    const { conditionsMap } = await import('../advise/conditions-map.ts');
    return yield* conditionsMap(scenario, map, { driven }).steps;
  }
  if (sought === 'plan') {
    if (!event) throw new Error('event: undefined');
    const { planFor } = await import('../advise/plan.ts');
    return yield* planFor(scenario, event, { driven }).steps;
  }
  if (sought === 'session') {
    const { sessionForecast } = await import('../advise/session-forecast.ts');
    return yield* sessionForecast(scenario, sample as ForecastAsked, { driven }).steps;
  }
  if (!sample) throw new Error('sample: null');
  const { spread } = await import('../advise/spread.ts');
  return yield* spread(scenario, sample, { driven }).steps;
}

/** Straight edges leave open what is asked: they do without the geometry of plates. */
async function leastFor(scenario: Question['scenario']): Promise<LeastOf> {
  const isPlate = ({ brake: { duct } }: Corner): boolean => duct !== null && blankOf(duct).kind !== 'edge';
  if (!cornersOf(scenario).some(isPlate)) return () => 0;
  return (await import('../duct/least-blanking.ts')).leastBlanking;
}

async function runsFor(question: Question): Promise<ReturnType<typeof answering>> {
  if (question.sought === 'spans' || question.sought === 'blankings') return answering(question);
  const { supposing } = await import('../advise/supposing.ts');
  return answering(question, supposing);
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
