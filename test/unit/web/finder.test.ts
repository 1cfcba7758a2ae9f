import { describe, expect, it } from 'vitest';
import { blankings } from '../../../engine/advise/blankings.ts';
import { conditionsMap, type MapAsked } from '../../../engine/advise/conditions-map.ts';
import { finished } from '../../../engine/advise/finished.ts';
import { planFor } from '../../../engine/advise/plan.ts';
import { safeSpans } from '../../../engine/advise/safe-span.ts';
import { sensitivity } from '../../../engine/advise/sensitivity.ts';
import { spread } from '../../../engine/advise/spread.ts';
import { weighed } from '../../../engine/advise/weighed.ts';
import type { Question } from '../../../engine/index.ts';
import { Searches } from '../../../engine/shell/searches.ts';
import { finder, type SearchDoor } from '../../../web/state/finder.ts';
import { changed } from '../../support/stints.ts';
import { smallEvent as event } from '../../support/events.ts';
import { toyStint } from '../../support/toy-stint.ts';

const toy = toyStint({
  'brakes.front.duct.recovery': [0.5, 1],
  'brakes.rear.wheel.crossflow': [0.5, 1],
  'car.brake_balance_front': [0.6, 0.68],
});
const DRAWS = 12;
const drawing = (scenario = toy): Question<'spread'> => ({
  sought: 'spread',
  sample: { draws: DRAWS, seed: 3 },
  scenario,
  driven: null,
});

type Deed = 'advance' | 'answer';

/** Workers as the browser has them, but in this thread: the messages are copied, and each takes its time. */
function bench(size: number, mayDie: (worker: number, deed: Deed, nth: number) => boolean = () => false) {
  const calls: { worker: number; deed: Deed | 'learn' | 'forget'; search: number }[] = [];
  const working = new Set<number>();
  let opened = 0;
  let mostBusy = 0;
  const open = (): SearchDoor => {
    const worker = opened++;
    const engine = new Searches();
    let nth = 0;
    const crossed = async <T>(deed: Deed, search: number, reply: () => T | Promise<T>): Promise<T> => {
      calls.push({ worker, deed, search });
      if (mayDie(worker, deed, nth++)) throw new Error('killed');
      working.add(worker);
      mostBusy = Math.max(mostBusy, working.size);
      // whoever began first is not who ends first
      await new Promise((resolve) => setTimeout(resolve, (7 * nth + 3 * worker) % 5));
      const said = structuredClone(await reply());
      working.delete(worker);
      return said;
    };
    return {
      learn: (search, question) => {
        calls.push({ worker, deed: 'learn', search });
        engine.learn(search, structuredClone(question));
      },
      forget: (search) => {
        calls.push({ worker, deed: 'forget', search });
        engine.forget(search);
      },
      advance: (search, outcomes) =>
        crossed('advance', search, () => engine.advance(search, structuredClone(outcomes))),
      answer: (search, ask) => crossed('answer', search, () => engine.answer(search, structuredClone(ask))),
      close: () => void working.delete(worker),
    };
  };
  const found = finder(open, size, () => () => undefined);
  const count = (deed: string): number => calls.filter((call) => call.deed === deed).length;
  return { ...found, calls, count, opened: () => opened, mostBusy: () => mostBusy };
}

const untilDone = (): AbortSignal => new AbortController().signal;

const map: MapAsked = {
  across: { key: 'conditions.ambient_C', values: [10, 25] },
  down: { key: 'traffic.gap_m', values: [null, 20] },
  sample: { draws: 4, seed: 3 },
};

describe('what is found is the same to the byte however many workers bring the runs', () => {
  const spans = finished(safeSpans(toy));
  const plates = changed({ 'brakes.rear.duct.blank': 'perforated', 'blanking_pct.rear': 75 }, toy);
  const questions = {
    spread: [drawing(), () => finished(spread(toy, { draws: DRAWS, seed: 3 }))],
    spans: [{ ...drawing(), sought: 'spans', sample: null }, () => finished(safeSpans(toy))],
    'spans of plates': [
      { ...drawing(plates), sought: 'spans', sample: null },
      () => finished(safeSpans(plates)),
    ],
    blankings: [{ ...drawing(), sought: 'blankings', sample: null }, () => finished(blankings(toy))],
    weighed: [
      { ...drawing(), sought: 'weighed', sample: { ...drawing().sample, spans } },
      () => finished(weighed(toy, { ...drawing().sample, spans })),
    ],
    sensitivity: [{ ...drawing(), sought: 'sensitivity', sample: null }, () => finished(sensitivity(toy))],
    conditions: [
      { ...drawing(), sought: 'conditions', sample: null, map },
      () => finished(conditionsMap(toy, map)),
    ],
    plan: [{ ...drawing(), sought: 'plan', sample: null, event }, () => finished(planFor(toy, event))],
  } as const;
  it.each(Object.keys(questions) as (keyof typeof questions)[])('%s by one, two and four', async (sought) => {
    const [question, here] = questions[sought];
    const expected = JSON.stringify(here());
    for (const size of [1, 2, 4]) {
      const { find, opened } = bench(size);
      const reply = await find(question as Question, { signal: untilDone() });
      expect(reply.kind).toBe('found');
      expect(JSON.stringify('found' in reply && reply.found)).toBe(expected);
      expect(opened()).toBeLessThanOrEqual(size);
      expect(opened()).toBeGreaterThanOrEqual(Math.min(size, 2));
    }
  });
});

describe('a search', () => {
  it('tells its progress run by run, of all that it has asked for', async () => {
    const { find } = bench(2);
    const told: [number, number][] = [];
    await find(drawing(), { signal: untilDone(), progress: (done, asked) => told.push([done, asked]) });
    expect(told).toEqual(Array.from({ length: DRAWS + 1 }, (_, i) => [i + 1, DRAWS + 1]));
  });

  it('keeps to one worker while that is the limit', async () => {
    const { find, limit, mostBusy } = bench(4);
    limit(1);
    await find(drawing(), { signal: untilDone() });
    expect(mostBusy()).toBe(1);
  });

  it('left before it was begun asks nobody', async () => {
    const { find, calls } = bench(2);
    const end = new AbortController();
    end.abort();
    expect(await find(drawing(), end)).toEqual({ kind: 'left' });
    expect(calls).toEqual([]);
  });

  it('left in the middle is forgotten by all at once, and nothing more is run for it', async () => {
    const { find, calls, count } = bench(2);
    const end = new AbortController();
    const progress = (done: number): void => {
      if (done !== 5) return;
      end.abort();
      expect(count('forget')).toBe(2);
      calls.length = 0;
    };
    expect(await find(drawing(), { signal: end.signal, progress })).toEqual({ kind: 'left' });
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(calls.filter(({ deed }) => deed !== 'forget')).toEqual([]);
  });

  it('left makes room for the next, and two begun in one tick do not disturb each other', async () => {
    const { find } = bench(2);
    const end = new AbortController();
    const warm = changed({ 'conditions.ambient_C': 31 }, toy);
    const left = find(drawing(), end);
    const here = find(drawing(), { signal: untilDone() });
    const there = find(drawing(warm), { signal: untilDone() });
    end.abort();
    expect(await left).toEqual({ kind: 'left' });
    expect(await here).toEqual({ kind: 'found', found: finished(spread(toy, { draws: DRAWS, seed: 3 })) });
    expect(await there).toEqual({ kind: 'found', found: finished(spread(warm, { draws: DRAWS, seed: 3 })) });
  });

  it('that can wait has nothing begun while another is looked for, and then goes on to the same', async () => {
    const { find, calls } = bench(2);
    const whole = { kind: 'found', found: finished(conditionsMap(toy, map)) };
    const spans: Promise<unknown>[] = [];
    const progress = (done: number): void => {
      if (done === 5) calls.length = 0;
      if (done === 5 || done === 30)
        spans.push(find({ ...drawing(), sought: 'spans', sample: null }, { signal: untilDone() }));
    };
    const question: Question<'conditions'> = { ...drawing(), sought: 'conditions', sample: null, map };
    expect(await find(question, { signal: untilDone(), canWait: true, progress })).toEqual(whole);
    const found = await Promise.all(spans);
    expect(found).toEqual([1, 2].map(() => ({ kind: 'found', found: finished(safeSpans(toy)) })));
    for (const search of [2, 3]) {
      const ofIt = (call: (typeof calls)[number]): boolean => call.search === search;
      const meanwhile = calls.slice(calls.findIndex(ofIt), calls.findLastIndex(ofIt));
      expect(meanwhile.filter(({ deed }) => deed === 'answer').length).toBeGreaterThan(10);
      expect(meanwhile.every(ofIt)).toBe(true);
    }
  });

  it('that fails in its draws fails as a whole with the reason, and begins no more of them', async () => {
    const { find, count } = bench(2);
    const broken = structuredClone(toy);
    broken.purpose = 'too long '.repeat(50); // what runs does not mind, what draws checks
    const reply = await find(drawing(broken), { signal: untilDone() });
    expect(reply).toMatchObject({ kind: 'failure', message: expect.stringContaining('purpose') as string });
    expect(count('answer')).toBeLessThan(DRAWS);
  });

  it('of what is no scenario fails with its problems', async () => {
    const { find } = bench(2);
    const hot = { ...toy, conditions: { ...toy.conditions, ambient_C: 295 } };
    const reply = await find(drawing(hot), { signal: untilDone() });
    expect(reply).toMatchObject({ kind: 'failure', message: expect.stringContaining('ambient_C') as string });
  });
});

describe('when a worker dies', () => {
  const whole = JSON.stringify({ kind: 'found', found: finished(spread(toy, { draws: DRAWS, seed: 3 })) });

  it('that only brought runs, another brings the one it had, and nothing else is run twice', async () => {
    const { find, count } = bench(2, (worker, _, nth) => worker === 1 && nth === 3);
    expect(JSON.stringify(await find(drawing(), { signal: untilDone() }))).toBe(whole);
    expect(count('answer')).toBe(DRAWS + 2);
    expect(count('advance')).toBe(2);
  });

  it.each(['advance', 'answer'])(
    'that held the search in an %s, it is begun again by another',
    async (at) => {
      const { find, calls } = bench(2, (worker, deed, nth) => worker === 0 && deed === at && nth > 2);
      expect(JSON.stringify(await find(drawing(), { signal: untilDone() }))).toBe(whole);
      const begun = new Set(calls.filter(({ deed }) => deed === 'advance').map(({ search }) => search));
      expect(begun.size).toBe(2);
    },
  );

  it('and every worker after it, the search fails with a sentence', async () => {
    const { find, opened } = bench(2, () => true);
    expect(await find(drawing(), { signal: untilDone() })).toEqual({
      kind: 'failure',
      message: 'its worker stopped, killed',
    });
    expect(opened()).toBe(3);
  });
});

it('whatever is begun, left and killed in whatever order, all are told an end and the next search finds the same', async () => {
  const DRAWN = 2;
  const short = { ...drawing(), sample: { draws: DRAWN, seed: 3 } };
  const whole = { kind: 'found', found: finished(spread(toy, short.sample)) };
  // a search survives two deaths of the workers that hold it
  const { find, limit, mostBusy } = bench(3, (worker, _, nth) => worker < 2 && nth === 11 + 9 * worker);
  const ends = Array.from({ length: 24 }, async (_, i) => {
    const end = new AbortController();
    const leaveAfter = (7 * i) % 6;
    if (i % 5 === 0) limit(1 + ((i / 5) % 3));
    const progress = (done: number): void => {
      if (done === leaveAfter) end.abort();
    };
    return [leaveAfter, await find(short, { signal: end.signal, progress })] as const;
  });
  for (const [leaveAfter, reply] of await Promise.all(ends)) {
    if (leaveAfter >= 1 && leaveAfter <= DRAWN + 1) expect(reply).toEqual({ kind: 'left' });
    else expect(reply).toEqual(whole);
  }
  expect(mostBusy()).toBeLessThanOrEqual(3);
  expect(await find(short, { signal: untilDone() })).toEqual(whole);
});
