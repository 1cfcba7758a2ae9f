/** A map of 12 by 8 conditions of both axles, and the plan of the built-in event, by the page's own pool. */
import weekend from '../../scenarios/events/sorrelby-weekend.json' with { type: 'json' };
import { answering } from '../../engine/advise/answering.ts';
import { conditionsMap, type MapAsked } from '../../engine/advise/conditions-map.ts';
import { supposing } from '../../engine/advise/supposing.ts';
import type { Question } from '../../engine/index.ts';
import { withChanges } from '../../engine/scenario/changes.ts';
import { parseEvent } from '../../engine/scenario/event-parse.ts';
import { defaultScenario } from '../../engine/scenario/library.ts';
import type { PoolBench } from './pool-page/main.ts';
import { withPoolPage } from './pool.ts';
import { rowOf, type Row } from './rows.ts';

const TIMES = 3;
const map: MapAsked = {
  across: { key: 'conditions.ambient_C', values: Array.from({ length: 12 }, (_, i) => 2 + 3 * i) },
  down: { key: 'traffic.gap_m', values: [null, 80, 50, 35, 25, 18, 12, 8] },
  sample: { draws: 32, seed: 1 },
};

/** Another altitude each time, so that nothing is remembered. */
const question = (time: number): Question<'conditions'> => ({
  sought: 'conditions',
  sample: null,
  map,
  scenario: withChanges(defaultScenario(), { 'conditions.altitude_m': 100 + time }),
  driven: null,
});

/** The same for the plan. */
function planQuestion(time: number): Question<'plan'> {
  const parsed = parseEvent(weekend);
  if (!parsed.ok) throw new Error('bench: the built-in event');
  const { scenario: stint, sessions, set } = parsed.event;
  const scenario = withChanges(stint, { 'conditions.altitude_m': 100 + time });
  return { sought: 'plan', sample: null, event: { sessions, set }, scenario, driven: null };
}

declare function bench(): PoolBench;

export const conditions = (): Promise<Row[]> =>
  withPoolPage(async (page) => {
    const timeOf = (asked: Question): Promise<number> => page.evaluate((of) => bench().timeOf(of), asked);
    const [times, plans]: [number[], number[]] = [[], []];
    for (let i = 0; i < TIMES; i++) {
      times.push(await timeOf(question(i)));
      plans.push(await timeOf(planQuestion(i)));
    }
    return [
      rowOf('12 by 8 conditions, both axles, by the pool', times, { unit: 'ms', wanted: 'at most 6000' }),
      rowOf('runs of a corner that it asks for', [runs()], { unit: '' }),
      rowOf('plan of three sessions, both axles, by the pool', plans, { unit: 'ms' }),
    ];
  });

/** A draw is run for both axles. */
function runs(): number {
  const { ground, steps } = conditionsMap(defaultScenario(), map);
  const answer = answering(ground, supposing);
  let [step, count] = [steps.next(), 0];
  while (!step.done) {
    const outcomes = step.value.map((ask) => [...answer(ask)]);
    count += outcomes.flat().length;
    step = steps.next(outcomes);
  }
  return count;
}
