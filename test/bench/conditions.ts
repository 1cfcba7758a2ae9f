/**
 * A map of 12 by 8 conditions of both axles, and the plan of the built-in event, by the page's own pool; and what the live page
 * feels of them meanwhile.
 */
import weekend from '../../scenarios/events/sorrelby-weekend.json' with { type: 'json' };
import { answering } from '../../engine/advise/answering.ts';
import { conditionsMap, type MapAsked } from '../../engine/advise/conditions-map.ts';
import { supposing } from '../../engine/advise/supposing.ts';
import type { Question } from '../../engine/index.ts';
import { withChanges } from '../../engine/scenario/changes.ts';
import { parseEvent } from '../../engine/scenario/event-parse.ts';
import { defaultScenario } from '../../engine/scenario/library.ts';
import { dragGaps } from './drag.ts';
import type { PoolBench } from './pool-page/main.ts';
import { withPoolPage } from './pool.ts';
import { rowOf, type Row } from './rows.ts';

const TIMES = 3;
const SPANS = 8;
/** As a plan brings them, an open mouth first. */
const panels = [0, 40, 55, 70, 80].map((blanking_pct) => ({
  letter: '',
  blanking_pct,
  sides_pct: null,
  step_K: 0,
}));
const map: MapAsked = {
  across: { key: 'conditions.ambient_C', values: Array.from({ length: 12 }, (_, i) => 2 + 3 * i) },
  down: { key: 'traffic.gap_m', values: [null, 80, 50, 35, 25, 18, 12, 8] },
  sample: { draws: 32, seed: 1 },
  sets: (['front', 'rear'] as const).map((axle) => ({ axle, panels })),
};

/** Another altitude each time, so that nothing is remembered. */
const question = (time: number): Question<'conditions'> => ({
  sought: 'conditions',
  sample: null,
  map,
  scenario: withChanges(defaultScenario(), { 'conditions.altitude_m': 100 + time }),
  driven: null,
});

/** One that is under way for as long as a drag is. */
const long = (time: number): Question<'conditions'> => ({
  ...question(time),
  map: { ...map, across: { ...map.across, values: Array.from({ length: 60 }, (_, i) => i / 2) } },
});

/** Of a stint that nothing else here asks for. */
const spansOf = (time: number): Question<'spans'> => ({
  sought: 'spans',
  sample: null,
  scenario: withChanges(defaultScenario(), { 'conditions.ambient_C': 10 + time / 4 }),
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
    const beside = { none: [] as number[], map: [] as number[], plan: [] as number[] };
    for (let i = 0; i < SPANS; i++) {
      beside.none.push(await timeOf(spansOf(3 * i)));
      for (const [what, asked, at] of [
        ['map', long(10 + i), 3 * i + 1],
        ['plan', planQuestion(10 + i), 3 * i + 2],
      ] as const) {
        await page.evaluate((of) => bench().begin(of, true), asked);
        beside[what].push(await timeOf(spansOf(at)));
        await page.evaluate(() => bench().end());
      }
    }
    await page.evaluate((of) => bench().begin(of, true), long(30));
    const gaps = await dragGaps(page, 'Front blanking');
    const dragged = await page.evaluate(() => bench().end());
    return [
      rowOf('12 by 8 conditions, both axles, by the pool', times, { unit: 'ms', wanted: 'at most 6000' }),
      rowOf('runs of a corner that it asks for', [runs()], { unit: '' }),
      rowOf('plan of three sessions, both axles, by the pool', plans, { unit: 'ms' }),
      rowOf('safe span of both axles, nothing else looked for', beside.none, { unit: 'ms' }),
      rowOf('the same during a map', beside.map, { unit: 'ms' }),
      rowOf('the same during a plan', beside.plan, { unit: 'ms' }),
      rowOf('gap between frames, blanking dragged during a map', gaps, { unit: 'ms', wanted: '99 % 34' }),
      rowOf('runs of that map meanwhile', [dragged.runs], { unit: '' }),
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
