import { afterEach, describe, expect, it } from 'vitest';
import type {
  AxlePlan,
  CornerReading,
  LikelyCondition,
  Plan,
  SessionFit,
  Uncovered,
} from '../../../engine/index.ts';
import { kelvin } from '../../../engine/units.ts';
import { disorder } from '../../../web/display/forecast-draft.ts';
import {
  bringWords,
  days,
  figuresIn,
  fitsWords,
  regretWords,
  unusedWords,
} from '../../../web/display/plan-words.ts';
import { predictedLines, type Predicted } from '../../../web/display/predicted-words.ts';
import { tripLines } from '../../../web/display/trip-words.ts';
import { uncoveredLines } from '../../../web/display/uncovered-words.ts';
import { followChoice } from '../../../web/display/units.ts';

const plainly = (text: string): string => text.replaceAll('\u00a0', ' ');
afterEach(() => followChoice(() => ''));

const panels = ['', 'A', 'B', 'C'].map((letter, i) => ({
  letter,
  blanking_pct: 20 * i,
  sides_pct: null,
  step_K: 10,
}));
const fit = (panel: number, start = panel): SessionFit => ({
  panel,
  start,
  chance: 0.5,
  closerTooHot_K: null,
});

function planOf(fits: SessionFit[], beforeStop: number | null): Plan {
  const session = { name: 'Race', bestCovered: 1, covered: 1, fits, beforeStop };
  return { axles: [{ axle: 'front', panels, sessions: [session] } as unknown as AxlePlan] } as Plan;
}

const reading: CornerReading = {
  axle: 'front',
  side: 'both',
  hottest_K: [kelvin(541), kelvin(640)],
  coldest_K: null,
  above_K: kelvin(588),
  below_K: kelvin(352),
};

function predictedOf(place: number, readings: CornerReading[] | null): (Predicted | null)[] {
  const corner = {
    axle: 'front',
    side: 'both',
    count: { in: 10, hot: 23, cold: 7, both: 0, notJudged: 0 },
    laps: [],
    hottest_K: [kelvin(600), kelvin(650), kelvin(700)],
    coldest_K: [null, null, null],
    stints: [],
  } as const;
  const corners = [{ ...corner, hottest_K: [...corner.hottest_K], coldest_K: [null], laps: [], stints: [] }];
  return [{ panels: { front: place }, forecast: { draws: 40, seed: 1, unknowns: 61, corners, readings } }];
}

const tripped = (plan: Plan, place: number): string[] =>
  tripLines({ plan, predicted: predictedOf(place, [reading]) }, 0).flatMap(({ hot, cold }) => [
    plainly(hot),
    plainly(cold),
  ]);

describe('days like the forecast', () => {
  it('are all or none only where they are', () => {
    expect([1, 0.999, 0.74, 0.001, 0].map((share) => plainly(days(share)))).toEqual([
      '100 of 100 days',
      'more than 99 of 100 days',
      '74 of 100 days',
      'fewer than 1 of 100 days',
      '0 of 100 days',
    ]);
    // what sums of chances are off by is no miss
    expect(plainly(days(0.1 + 0.2 + 0.7 - 1e-12))).toBe('100 of 100 days');
  });

  it('are told by panel', () => {
    expect(plainly(fitsWords({ fits: [fit(2), fit(1), fit(0)] }, panels))).toBe(
      'B on 50, A on 50 and open on 50 of 100 days',
    );
  });
});

describe('what a session is likely to bring', () => {
  it('counts the runs that are in and tells what became of the others', () => {
    const plan = planOf([fit(2)], null);
    const [line] = predictedLines({ plan, predicted: predictedOf(2, [reading]) }, 0);
    expect(Object.values(line!).map(plainly)).toEqual([
      'Front',
      '10 of 40 in, 23 too hot, 7 too cold',
      '600 to 700 °C',
      'no hard stop',
      '540 to 640 °C',
      'no hard stop',
      'B (40 %)',
    ]);
    expect(predictedLines({ plan, predicted: predictedOf(2, null) }, 0)[0]!.readsHottest).toBe('');
  });
});

describe('the trip card', () => {
  it('rounds both limits down, and goes by one panel', () => {
    expect(tripped(planOf([fit(2)], 0.9), 2)).toEqual([
      'Above 585 °C on two laps running: go one more open at the next stop, B to A.',
      'Hard stops begin below 350 °C on two laps running: tell the driver it is cold; go one more closed before the next run, B to C.',
    ]);
  });

  it('names both panels where the session starts one more closed, and slows down where no stop is planned', () => {
    expect(tripped(planOf([fit(1, 2)], 0.9), 1)[0]).toContain('at the next stop, B to A, or A to open.');
    expect(tripped(planOf([fit(1)], null), 1)[0]).toContain(
      'brake earlier and softer; go one more open before the next run, A to open.',
    );
  });

  it('tells sides that are told the same once, and others apart', () => {
    const plan = planOf([fit(2)], 0.9);
    const left: CornerReading = { ...reading, side: 'left' };
    const right: CornerReading = { ...reading, side: 'right', above_K: kelvin(586) };
    const cornersOf = (readings: CornerReading[]): string[] =>
      tripLines({ plan, predicted: predictedOf(2, readings) }, 0).map(({ corner }) => corner);
    expect(cornersOf([left, right])).toEqual(['Front']);
    expect(cornersOf([left, { ...right, below_K: kelvin(300) }])).toEqual(['Front left', 'Front right']);
  });

  it('says where the set has no more to give', () => {
    expect(tripped(planOf([fit(0)], 0.9), 0)[0]).toContain('nothing is left to open');
    expect(tripped(planOf([fit(3)], 0.9), 3)[1]).toContain('the set has nothing more closed');
  });

  it('is in the unit chosen, and absent where no sensor is described', () => {
    const plan = planOf([fit(2)], 0.9);
    followChoice(() => '°F');
    expect(tripped(plan, 2)[0]).toContain('Above 1090 °F');
    expect(tripLines({ plan, predicted: predictedOf(2, null) }, 0)).toEqual([]);
  });
});

describe('the words of a plan', () => {
  const axleOf = (called: number[], best: number[]): AxlePlan => {
    const lines = called.map((panel) => ({ panel, when: [] }));
    return { panels, rule: { lines }, best } as unknown as AxlePlan;
  };

  it('name the panels that the rule never calls for, and leave at home what is the best on no day', () => {
    const axle = axleOf([1, 0], [0, 1, 3]);
    expect(unusedWords(axle)).toBe('C');
    expect(plainly(bringWords(axle))).toBe(
      'Bring A (20 %) and C (60 %). Leave B (40 %) at home: the best on no day that may come.',
    );
    expect(bringWords(axleOf([0], [0, 0]))).toMatch(/^Bring no panel: an open mouth is the best/);
  });

  it('tell neighbours that fare alike as one, the likeliest first', () => {
    const at = (from_C: number, isWet: boolean): LikelyCondition =>
      ({ from_C, to_C: from_C + 2, gap_m: null, isWet, weight: isWet ? 0.05 : 0.2 }) as LikelyCondition;
    const conditions = [at(10, true), at(12, true), at(30, false), at(34, false)];
    const out = (condition: number, hot_K: number): Uncovered => ({
      condition,
      panel: condition < 2 ? 2 : 0,
      status: condition < 2 ? 'cold' : 'hot',
      hotMargin_K: -hot_K,
      coldMargin_K: -hot_K,
    });
    const uncovered = [out(0, 31), out(1, 12), out(2, 5), out(3, 7)];
    expect(uncoveredLines(uncovered, conditions, panels).map(plainly)).toEqual([
      '30 to 32 °C, clear air, dry (20 of 100 days): the least bad is open, 5 K too hot.',
      '34 to 36 °C, clear air, dry (20 of 100 days): the least bad is open, 7 K too hot.',
      '10 to 14 °C, clear air, wet (10 of 100 days): the least bad is B, 12 to 31 K too cold.',
    ]);
  });

  it('tell what a wrong choice costs in a difference of the unit chosen', () => {
    const regret = {
      status: 'hot',
      hotMargin_K: -10,
      coldMargin_K: 50,
      regret_K: 20,
      isBest: false,
    } as const;
    followChoice(() => '°F');
    expect(regretWords(regret).map(plainly)).toEqual(['18 °F too hot', '36 °F worse']);
  });

  it('part figures from what stands between them', () => {
    expect(figuresIn('Below \u22122\u00a0°C and dry, left 65\u00a0%')).toEqual([
      { part: 'Below ', isFigure: false },
      { part: '\u22122\u00a0°C', isFigure: true },
      { part: ' and dry, left ', isFigure: false },
      { part: '65\u00a0%', isFigure: true },
    ]);
    expect(figuresIn('12 to 14\u00a0°C, wet')[0]).toEqual({ part: '12 to 14\u00a0°C', isFigure: true });
  });
});

describe('a forecast that is being typed', () => {
  it('says which of its ends stand in the wrong order, in the unit chosen', () => {
    expect(disorder({ low: 1, likely: 1, high: 2 }, '°C')).toBe('');
    expect(plainly(disorder({ low: 35, likely: 26, high: 31 }, '°C'))).toBe(
      'low 35 °C is above likely 26 °C',
    );
    followChoice(() => '°F');
    expect(plainly(disorder({ low: 10, likely: 30, high: 20 }, '°C'))).toBe(
      'likely 86 °F is above high 68 °F',
    );
  });
});
