import { describe, expect, it } from 'vitest';
import { answering } from '../../../engine/advise/answering.ts';
import { finished } from '../../../engine/advise/finished.ts';
import { safeSpans } from '../../../engine/advise/safe-span.ts';
import { spanTogether, type SafeSpan } from '../../../engine/advise/span.ts';
import { leastBlanking } from '../../../engine/duct/least-blanking.ts';
import { layOver } from '../../../engine/scenario/tree.ts';
import { shippedStint } from '../../../engine/scenario/library.ts';
import type { Scenario } from '../../../engine/scenario/schema.ts';
import { compile } from '../../../engine/stint/compile.ts';
import type { CornerResult, Verdict } from '../../../engine/stint/result.ts';
import { run } from '../../../engine/stint/run.ts';
import { changed, withPhases } from '../../support/stints.ts';

type At = Pick<SafeSpan, 'axle' | 'side'>;

const summary = (scenario: Scenario, { axle, side }: At): CornerResult =>
  run(compile(scenario), 'summary').corners.find((one) => one.axle === axle && one.side === side)!;

/** Each scenario is searched once, however many tests ask. */
const searched = new Map<Scenario, SafeSpan[]>();
function spanOf(scenario: Scenario, { axle, side }: At = { axle: 'front', side: 'both' }): SafeSpan {
  const spans = searched.get(scenario) ?? finished(safeSpans(scenario));
  searched.set(scenario, spans);
  return spans.find((one) => one.axle === axle && one.side === side)!;
}

const shipped = shippedStint('sorrelby-20');

/**
 * The whole stint run without the search: the first and the last blanking that stays in. Every half percent, or where the ends
 * are known to be near, every half percent around them and every two and a half elsewhere.
 */
function swept(scenario: Scenario, at: At, key: string, near?: readonly number[]): [number, number] | null {
  const isAsked = (pct: number): boolean =>
    !near || pct % 2.5 === 0 || near.some((end) => Math.abs(end - pct) <= 2.5);
  const inside: number[] = [];
  for (let pct = 0; pct <= 100; pct += 0.5) {
    if (!isAsked(pct)) continue;
    if (summary(changed({ [key]: pct }, scenario), at).verdict.status === 'in') inside.push(pct);
  }
  return inside.length > 0 ? [inside[0]!, inside.at(-1)!] : null;
}

const front: At = { axle: 'front', side: 'both' };
const left: At = { axle: 'front', side: 'left' };
const rear: At = { axle: 'rear', side: 'both' };
const restart = (): Scenario =>
  withPhases(
    [
      { kind: 'out', laps: 1 },
      { kind: 'push', laps: 5 },
      { kind: 'safety', laps: 2 },
      { kind: 'push', laps: 5 },
    ],
    13,
  );
const uneven = (): Scenario =>
  changed({
    'blanking_pct.front_left': 50,
    'blanking_pct.front_right': 60,
    'sides.front_left.duct.recovery': 0.7,
    'stint.laps': 11,
  });

describe('the safe span agrees with a sweep of whole runs every half percent, within half a percent', () => {
  it.each([
    ['the default stint, front', () => shipped, front, 'blanking_pct.front'],
    ['eleven laps, rear', () => changed({ 'stint.laps': 11 }), rear, 'blanking_pct.rear'],
    ['a safety car in the middle, front', restart, front, 'blanking_pct.front'],
    [
      'a cold day behind another car, front',
      () => changed({ 'stint.laps': 11, 'conditions.ambient_C': 5, 'traffic.gap_m': 12 }),
      front,
      'blanking_pct.front',
    ],
    ['the left of an uneven axle', uneven, left, 'blanking_pct.front_left'],
  ])(
    '%s',
    (_, scenario, at, key) => {
      const searchedIn = scenario();
      const span = spanOf(searchedIn, at).span_pct;
      const sweep = swept(searchedIn, at, key, searchedIn === shipped ? undefined : span!);
      expect(sweep).not.toBeNull();
      expect(Math.abs(span![0] - sweep![0])).toBeLessThanOrEqual(0.5);
      expect(Math.abs(span![1] - sweep![1])).toBeLessThanOrEqual(0.5);
    },
    120_000,
  );
});

describe('the ends of the span', () => {
  const scenario = shipped;
  const span = spanOf(scenario);
  const [low, high] = span.span_pct!;
  const status = (pct: number): Verdict['status'] =>
    summary(changed({ 'blanking_pct.front': pct }, scenario), front).verdict.status;

  it('are in, and a fifth of a percent further is out: cold below, hot above', () => {
    expect([low, high].map(status)).toEqual(['in', 'in']);
    expect([low - 0.2, high + 0.2].map(status)).toEqual(['cold', 'hot']);
  });

  // settled laps are alike to hundredths of a kelvin, so that another lap may be the first a tenth of a point further on
  it('name the limit, and a lap and its corner that a run just beyond fails at', () => {
    const failing = (blanking_pct: number) =>
      summary(changed({ 'blanking_pct.front': blanking_pct }, scenario), front).laps.filter(
        (lap) => lap.in === false,
      );
    const cold = failing(low - 0.2).find(({ lap }) => lap === span.low?.lap);
    const hot = failing(high + 0.2).find(({ lap }) => lap === span.high?.lap);
    expect(span.low).toMatchObject({ limit: 'bite', place: cold?.coldestStopPlace });
    expect(span.high).toMatchObject({ limit: 'face peak', place: hot?.facePeakPlace });
  });

  it('are not bounded where fully open is in', () => {
    expect(spanOf(scenario, rear)).toMatchObject({ low: null, span_pct: [0, expect.any(Number)] });
  });

  it('name the bulk where its limit is the lower one', () => {
    const low = changed({ 'brakes.front.window.bulk_C': 513 }, scenario);
    expect(spanOf(low).high?.limit).toBe('bulk');
  });

  it('name the mean of the lap where a run limit is the higher one', () => {
    const kept = changed({ 'brakes.front.window.run_C': 445, 'brakes.front.window.bite_C': 300 }, scenario);
    expect(spanOf(kept).low).toMatchObject({ limit: 'run', place: '' });
  });

  it('do not depend on how the mouth is blanked now', () => {
    expect(spanOf(changed({ 'blanking_pct.front': 5, 'blanking_pct.rear': 95 })).span_pct).toEqual(
      span.span_pct,
    );
  });
});

describe('what is proposed', () => {
  /** The shipped stint with other panels cut for the front. */
  const withPanels = (panels_pct: number[]): Scenario =>
    layOver(shipped, { brakes: { front: { duct: { panels_pct } } } }) as Scenario;

  it('has the largest smaller margin of all whole percents', () => {
    const scenario = changed({ 'stint.laps': 9 });
    const { best } = spanOf(scenario);
    const margins = Array.from({ length: 86 }, (_, pct) => {
      const { verdict } = summary(changed({ 'blanking_pct.front': pct }, scenario), front);
      return Math.min(verdict.hotMargin_K, verdict.coldMargin_K);
    });
    expect(best?.blanking_pct).toBe(margins.indexOf(Math.max(...margins)));
    expect(Math.min(best!.hotMargin_K, best!.coldMargin_K)).toBeCloseTo(Math.max(...margins), 6);
  });

  it('is a panel where one inside the span has nearly as much to spare', () => {
    expect(spanOf(shipped, rear).proposal).toMatchObject({ blanking_pct: 40, panel: 1 });
  });

  it('is a blank to measure where the panels inside the span are on its edge', () => {
    const [low, high] = spanOf(shipped).span_pct!;
    const onEdge = withPanels([low + 0.5, high - 0.5]);
    const { proposal, best, span_pct } = spanOf(onEdge);
    expect(span_pct).toEqual([low, high]);
    expect(best!.panel).toBeNull();
    expect(proposal).toEqual(best);
    const middle = Math.round((low + high) / 2);
    expect(spanOf(withPanels([low + 0.5, middle])).proposal).toMatchObject({
      blanking_pct: middle,
      panel: 1,
    });
  });

  it('is what its plate can be cut for, or nothing where that is too closed', () => {
    const plate = 'perforated';
    const plates = changed({
      'conditions.ambient_C': 38,
      'blanking_pct.front': 75,
      'blanking_pct.rear': 75,
      'brakes.front.duct.blank': plate,
      'brakes.rear.duct.blank': plate,
    });
    const least = leastBlanking(plates.brakes.rear.duct!);
    const wide = spanOf(plates, rear);
    expect(wide.candidates.map(({ blanking_pct }) => blanking_pct)).toEqual([0, 75]);
    expect(least).toBeGreaterThan(60);
    expect(wide.best!.blanking_pct === 0 || wide.best!.blanking_pct >= least).toBe(true);
    const narrow = spanOf(plates);
    expect(narrow.span_pct![1]).toBeLessThan(leastBlanking(plates.brakes.front.duct!));
    expect([narrow.candidates, narrow.proposal]).toEqual([[], null]);
  });

  it('is never more than 85 %, although more may be in', () => {
    const cold = changed({
      'conditions.ambient_C': -25,
      'brakes.front.window.bite_C': 430,
      'brakes.front.window.face_peak_C': 900,
      'brakes.front.window.bulk_C': 850,
    });
    const { span_pct, best } = spanOf(cold);
    expect(span_pct![0]).toBeLessThan(85);
    expect(span_pct![1]).toBeGreaterThan(85);
    expect(best?.blanking_pct).toBe(85);
  });

  it('is more than 85 % only where nothing less holds', () => {
    const cold = changed({
      'conditions.ambient_C': -25,
      'brakes.front.window.bite_C': 520,
      'brakes.front.window.face_peak_C': 900,
      'brakes.front.window.bulk_C': 850,
    });
    const { span_pct, proposal } = spanOf(cold);
    expect(span_pct![0]).toBeGreaterThan(85);
    expect(proposal!.blanking_pct).toBeGreaterThanOrEqual(span_pct![0]);
    expect(proposal!.coldMargin_K).toBeGreaterThan(0);
  });
});

describe('in a span that is narrow', () => {
  const asShipped = (ambient_C: number): Record<string, number> => ({
    'conditions.ambient_C': ambient_C,
    'brakes.front.window.face_peak_C': 650,
    'brakes.front.window.bite_C': 400,
    'brakes.front.window.bulk_C': 560,
  });
  const narrow = (more: Record<string, number>): Scenario =>
    changed({
      'conditions.ambient_C': 16,
      'brakes.front.window.face_peak_C': 635,
      'brakes.front.window.bite_C': 399,
      'brakes.front.window.bulk_C': 627,
      ...more,
    });

  it.each([{}, { 'brakes.front.window.face_peak_C': 633.4 }, asShipped(-30)])(
    'what is proposed lies inside and its own run is in, a whole percent where there is one: %j',
    (more) => {
      const scenario = narrow(more);
      const { span_pct, proposal } = spanOf(scenario);
      if (span_pct === null) throw new Error('this case needs a span');
      const [low, high] = span_pct;
      expect(proposal!.blanking_pct).toBeGreaterThanOrEqual(low);
      expect(proposal!.blanking_pct).toBeLessThanOrEqual(high);
      expect(Number.isInteger(proposal!.blanking_pct)).toBe(Math.ceil(low) <= Math.floor(high));
      const run = summary(changed({ 'blanking_pct.front': proposal!.blanking_pct }, scenario), front);
      expect(run.verdict.status).toBe('in');
    },
  );
});

describe('where no blanking holds', () => {
  it('too wide a swing is told with its size, what each limit would ask, and what was tried and helps', () => {
    const narrow = changed({ 'brakes.front.window.face_peak_C': 560, 'brakes.front.window.bite_C': 420 });
    const { span_pct, none, best } = spanOf(narrow);
    expect(span_pct).toBeNull();
    expect(none).toMatchObject({ why: 'swing', width_K: 140 });
    expect(none!.swing_K!).toBeGreaterThan(140);
    expect(none!.warmFrom_pct!).toBeGreaterThan(none!.coolTo_pct ?? 0);
    expect(best!.hotMargin_K).toBeLessThan(0);
    expect(best!.coldMargin_K).toBeLessThan(0);
    const softer = none!.remedies.find(({ key }) => key === 'driver.grip_share_braking_dry')!;
    const tried = spanOf(changed({ [softer.key]: softer.to }, narrow));
    const least = ({ hotMargin_K, coldMargin_K }: NonNullable<SafeSpan['best']>): number =>
      Math.min(hotMargin_K, coldMargin_K);
    expect(least(tried.best!) - least(best!)).toBeCloseTo(softer.gain_K, 6);
  });

  it('too hot even open asks for air', () => {
    const { none, best } = spanOf(shippedStint('club-evening'));
    expect(none).toMatchObject({ why: 'hot when open', coolTo_pct: null, warmFrom_pct: 0 });
    expect(best?.blanking_pct).toBe(0);
    expect(none!.remedies[0]).toMatchObject({ key: 'brakes.front.duct.hoses', from: 1, to: 2 });
  });

  it('too cold even closed says so', () => {
    const { none } = spanOf(
      changed({
        'brakes.front.window.bite_C': 900,
        'brakes.front.window.face_peak_C': 1300,
        'brakes.front.window.bulk_C': 1200,
      }),
    );
    expect(none).toMatchObject({ why: 'cold when closed', coolTo_pct: 100, warmFrom_pct: null });
  });

  it('an axle without a duct and a stint without counted laps have a reason instead', () => {
    expect(spanOf(shippedStint('club-evening'), rear)).toMatchObject({
      span_pct: null,
      best: null,
      reason: 'there is no duct to blank',
    });
    const short = withPhases(
      [
        { kind: 'out', laps: 1 },
        { kind: 'push', laps: 2 },
      ],
      3,
    );
    expect(spanOf(short).reason).toContain('no lap counts');
  });
});

describe('a stint whose tape comes off at a stop', () => {
  const phases = (later_pct: number): Scenario =>
    withPhases(
      [
        { kind: 'out', laps: 1 },
        { kind: 'push', laps: 8 },
        { kind: 'in', laps: 1 },
        { kind: 'stand', duration_s: 30, brake_held: false, set: { 'blanking_pct.front': later_pct } },
        { kind: 'out', laps: 1 },
        { kind: 'push', laps: 8 },
      ],
      19,
    );

  it('has a span before the stop where no first blanking holds the laps after it', () => {
    const span = spanOf(phases(0));
    expect(span.span_pct).toBeNull();
    expect(span.before).toMatchObject({ lap: 11, none: null });
    const [low, high] = span.before!.span_pct!;
    const before = (pct: number): (boolean | null)[] =>
      summary(changed({ 'blanking_pct.front': pct }, phases(0)), front)
        .laps.filter(({ lap, in: is }) => lap < 11 && is !== null)
        .map((lap) => lap.in);
    expect([...before(low), ...before(high)]).not.toContain(false);
    expect(before(low - 0.2)).toContain(false);
    expect(before(high + 0.2)).toContain(false);
  });

  it('is the same for a side that had a blanking of its own: the stop sets both', () => {
    const apart = changed({ 'blanking_pct.front_left': 58, 'blanking_pct.front_right': 59 }, phases(0));
    const [left, whole] = [spanOf(apart, { axle: 'front', side: 'left' }), spanOf(phases(0))];
    expect(left.before).toEqual(whole.before);
    const later = (scenario: Scenario, at: At): unknown =>
      summary(scenario, at).laps.at(-1)!.faceMax_K.toFixed(0);
    const both = changed({ 'blanking_pct.front': 58 }, phases(0));
    expect(later(apart, { axle: 'front', side: 'left' })).toBe(later(both, front));
  });

  it('is told by a phase that blanks one side alone, too', () => {
    const scenario = phases(0);
    const one = withPhases(
      scenario.stint.phases.map((phase) =>
        phase.set ? { ...phase, set: { 'blanking_pct.front_left': 0 } } : phase,
      ),
      19,
    );
    expect(spanOf(one, left)).toMatchObject({ changesOn: 11, before: { lap: 11 } });
    expect(spanOf(one, { axle: 'front', side: 'right' })).toMatchObject({ changesOn: null, none: null });
  });

  it('decides nothing where the blanking changes before any lap counts', () => {
    const early = withPhases(
      [
        { kind: 'out', laps: 1, set: { 'blanking_pct.front': 58 } },
        { kind: 'push', laps: 8 },
      ],
      9,
    );
    expect(spanOf(early)).toMatchObject({ changesOn: 1, isIdle: true, before: null });
    expect(spanOf(phases(0))).toMatchObject({ changesOn: 11, isIdle: false });
  });

  it('has one span over all laps where the later blanking holds', () => {
    expect(spanOf(phases(58))).toMatchObject({
      before: null,
      none: null,
      span_pct: [expect.any(Number), expect.any(Number)],
    });
  });
});

describe('sides', () => {
  it('that differ have a span each, and one together where one blanking moves both', () => {
    const scenario = changed({ 'sides.front_left.duct.recovery': 0.7 });
    const spans = finished(safeSpans(scenario)).filter(({ axle }) => axle === 'front');
    const [left, right] = spans.map(({ span_pct }) => span_pct!);
    expect(spans.map(({ side }) => side)).toEqual(['left', 'right']);
    expect(left![1]).toBeLessThan(right![1]);
    expect(spanTogether(spans)).toEqual([Math.max(left![0], right![0]), left![1]]);
  });

  it('too far apart have none together', () => {
    const at = (low: number, high: number): SafeSpan => ({
      ...spanOf(shipped),
      span_pct: [low, high],
    });
    expect(spanTogether([at(10, 20), at(30, 40)])).toBeNull();
    expect(spanTogether([])).toBeNull();
  });
});

it('both corners and both ends are searched side by side, no blanking of a corner twice', () => {
  const { ground, steps } = safeSpans(shipped);
  const answer = answering(ground);
  const rounds: number[] = [];
  const asked = new Set<string>();
  for (let step = steps.next(); !step.done;) {
    rounds.push(step.value.length);
    for (const ask of step.value) asked.add(JSON.stringify(ask));
    step = steps.next(step.value.map((ask) => [...answer(ask)]));
  }
  const runs = rounds.reduce((sum, each) => sum + each, 0);
  expect(runs).toBe(asked.size);
  expect(runs).toBeGreaterThan(30);
  expect(runs).toBeLessThan(70);
  expect(rounds.length).toBeLessThan(runs / 2);
});
