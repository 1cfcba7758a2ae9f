import { describe, expect, it } from 'vitest';
import type { Count } from '../../../engine/advise/doubt.ts';
import { finished } from '../../../engine/advise/finished.ts';
import type { Ask } from '../../../engine/advise/search.ts';
import { safeSpans } from '../../../engine/advise/safe-span.ts';
import { smallerMargin_K, type SafeSpan } from '../../../engine/advise/span.ts';
import { spread } from '../../../engine/advise/spread.ts';
import { weighed } from '../../../engine/advise/weighed.ts';
import { layOver } from '../../../engine/scenario/tree.ts';
import type { Scenario } from '../../../engine/scenario/schema.ts';
import type { CompileOptions } from '../../../engine/stint/compile.ts';
import { changed, withPhases } from '../../support/stints.ts';
import { doubting, toyStint, type Ranges } from '../../support/toy-stint.ts';

const few: Ranges = {
  'brakes.front.duct.recovery': [0.5, 1],
  'brakes.rear.wheel.crossflow': [0.3, 1],
  'car.brake_balance_front': [0.58, 0.66],
};
/** Every axle with a span wide enough to choose in. */
const wide = {
  'brakes.front.window.bite_C': 330,
  'brakes.rear.window.bite_C': 290,
  'brakes.front.window.face_peak_C': 640,
  'brakes.rear.window.face_peak_C': 540,
};
const toy = toyStint(few, wide);
const SAMPLE = { draws: 12, seed: 5 };

const weigh = (scenario: Scenario, options: CompileOptions = {}): SafeSpan[] => {
  const spans = finished(safeSpans(scenario, options));
  return finished(weighed(scenario, { ...SAMPLE, spans }, options));
};

const withPanels = (panels_pct: number[], base: Scenario = toy): Scenario =>
  layOver(base, {
    brakes: { front: { duct: { panels_pct } }, rear: { duct: { panels_pct } } },
  }) as Scenario;

const keyOf = ({ axle, side }: SafeSpan): string =>
  side === 'both' ? `blanking_pct.${axle}` : `blanking_pct.${axle}_${side}`;

/** Each candidate fitted by itself, and the whole spread run under it. */
const byItself = (scenario: Scenario, span: SafeSpan, options: CompileOptions = {}): Count[] =>
  span.candidates.map(({ blanking_pct }) => {
    const fitted = changed({ [keyOf(span)]: blanking_pct }, scenario);
    const { corners } = finished(spread(fitted, SAMPLE, options));
    return corners.find(({ axle, side }) => axle === span.axle && side === span.side)!.count;
  });

const held = changed({ 'stint.hold_trace': true, 'conditions.ambient_C': 32 }, toy);
const uneven = changed({ 'blanking_pct.front_left': 70, 'blanking_pct.front_right': 20 }, toy);

describe('what can be fitted is weighed', () => {
  it.each<[string, Scenario, CompileOptions]>([
    ['panels', toy, {}],
    ['many panels', withPanels([10, 30, 35, 50, 65, 80]), {}],
    ['steps of tape', withPanels([]), {}],
    ['sides that differ', uneven, {}],
    ['a held trace', held, { driven: toy }],
  ])('as the spread counts each by itself: %s', (_, scenario, options) => {
    const found = weigh(scenario, options);
    const many = found.flatMap((span) => span.candidates.map(({ count }) => count?.in));
    expect(new Set(many).size).toBeGreaterThan(1);
    for (const span of found)
      expect(span.candidates.map(({ count }) => count)).toEqual(byItself(scenario, span, options));
  });

  it('and what is proposed comes with its draws, as the spread makes them under it', () => {
    for (const { axle, proposal, drawn } of weigh(toy)) {
      const fitted = changed({ [`blanking_pct.${axle}`]: proposal!.blanking_pct }, toy);
      expect(drawn).toEqual(finished(spread(fitted, SAMPLE)).corners.find((corner) => corner.axle === axle));
      expect(proposal!.count).toEqual(drawn!.count);
    }
  });

  it('the same whatever is fitted now', () => {
    const spans = finished(safeSpans(toy));
    const under = (pct: number): SafeSpan[] => {
      const scenario = changed({ 'blanking_pct.front': pct, 'blanking_pct.rear': 100 - pct }, toy);
      return finished(weighed(scenario, { ...SAMPLE, spans }));
    };
    expect(under(5)).toEqual(under(90));
  });

  it('by one run a draw, of all candidates of all corners', () => {
    const spans = finished(safeSpans(toy));
    const { value: asks } = weighed(toy, { ...SAMPLE, spans }).steps.next();
    expect(asks).toHaveLength(SAMPLE.draws);
    const all = spans.reduce((sum, { candidates }) => sum + candidates.length, 0);
    expect(all).toBeGreaterThan(3);
    expect(new Set((asks as readonly Ask[]).map(({ at }) => at?.length))).toEqual(new Set([all]));
  });

  it('over the laps before the blanking changes, where no choice holds those after it', () => {
    const set = { 'blanking_pct.front': 100 };
    const phases = [
      { kind: 'push' as const, laps: 4 },
      { kind: 'push' as const, laps: 2, set },
    ];
    const shut = doubting(withPhases(phases, 6, toy), few);
    const { before, candidates } = weigh(shut)[0]!;
    expect(candidates).toEqual([]);
    const short = doubting(withPhases([{ kind: 'push', laps: 4 }], 4, toy), few);
    const alone = weigh(short)[0]!;
    expect(before!.candidates.map(({ count }) => count!.in)).toEqual(
      alone.candidates.map(({ count }) => count!.in),
    );
    expect(before!.proposal).toEqual(alone.proposal);
    expect(before!.drawn!.laps.map(({ lap }) => lap)).toEqual([1, 2, 3, 4]);
  });

  it('not where nothing is in doubt, nothing holds, or what is fitted decides nothing', () => {
    const asIs = (scenario: Scenario): void => {
      const spans = finished(safeSpans(scenario));
      const { steps } = weighed(scenario, { ...SAMPLE, spans });
      expect(steps.next()).toEqual({ done: true, value: spans });
    };
    asIs(doubting(toy, {}));
    const set = { 'blanking_pct.front': 40, 'blanking_pct.rear': 40 };
    const phases = [
      { kind: 'push' as const, laps: 1 },
      { kind: 'push' as const, laps: 2, set },
    ];
    asIs(doubting(withPhases(phases, 3, toy), few));
    asIs(
      toyStint(few, {
        'brakes.front.window.bite_C': 900,
        'brakes.rear.window.bite_C': 900,
        'brakes.front.window.face_peak_C': 950,
        'brakes.rear.window.face_peak_C': 950,
      }),
    );
  });
});

describe('what is proposed', () => {
  it('is what has more to spare where one draw speaks for another, and comes with its own draws', () => {
    const cold = changed({ 'conditions.ambient_C': -5 }, withPanels([0, 40, 60]));
    const { candidates, proposal, drawn } = weigh(cold)[1]!;
    const told = candidates.map(({ blanking_pct, count }) => [blanking_pct, count!.in]);
    expect(told.slice(0, 2)).toEqual([
      [0, 10],
      [40, 9],
    ]);
    expect(proposal).toBe(candidates[1]);
    expect(drawn!.count).toEqual(proposal!.count);
  });

  const shapes = [[], [0, 40, 60, 75, 85], [20, 45, 55, 70], [33, 34, 35], [50]];
  const days = [-15, 20, 38];
  it.each(shapes.flatMap((panels) => days.map((day) => [panels, day] as const)))(
    'is never beaten beyond chance by what else can be fitted, never on an edge where anything else is: panels %j at %i °C',
    (panels, ambient_C) => {
      const scenario = changed({ 'conditions.ambient_C': ambient_C }, withPanels(panels));
      for (const { proposal, candidates, span_pct, low, high, best } of weigh(scenario)) {
        if (!span_pct) {
          expect([candidates, proposal]).toEqual([[], best]);
          continue;
        }
        expect(candidates).toContainEqual(proposal);
        const most = Math.max(...candidates.map(({ count }) => count!.in));
        expect(most - proposal!.count!.in).toBeLessThanOrEqual(Math.sqrt(SAMPLE.draws));
        for (const other of candidates) {
          if (other.count!.in === most)
            expect(smallerMargin_K(proposal!)).toBeGreaterThanOrEqual(smallerMargin_K(other));
          expect(other.blanking_pct).toBeGreaterThanOrEqual(span_pct[0]);
          expect(other.blanking_pct).toBeLessThanOrEqual(span_pct[1]);
          expect(candidates.filter(({ blanking_pct }) => blanking_pct === other.blanking_pct)).toEqual([
            other,
          ]);
        }
        const onEdge = candidates.filter(
          ({ blanking_pct: at }) => (low && at - span_pct[0] < 1) || (high && span_pct[1] - at < 1),
        );
        expect(onEdge.length === 0 || candidates.length === 1).toBe(true);
      }
    },
  );
});
