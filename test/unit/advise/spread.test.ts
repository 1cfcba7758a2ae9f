import { describe, expect, it } from 'vitest';
import type { CornerSpread, Spread } from '../../../engine/advise/doubt.ts';
import { latinHypercube, quantileTriangular } from '../../../engine/advise/latin-hypercube.ts';
import { finished } from '../../../engine/advise/finished.ts';
import { quantile, quantilesOf } from '../../../engine/advise/quantiles.ts';
import { spread } from '../../../engine/advise/spread.ts';
import { supposing } from '../../../engine/advise/supposing.ts';
import { unknownsOf } from '../../../engine/advise/unknowns.ts';
import { layOver, valueAt } from '../../../engine/scenario/tree.ts';
import type { Scenario } from '../../../engine/scenario/schema.ts';
import { changed, corner, driven, withPhases } from '../../support/stints.ts';
import { doubting, toyStint, type Ranges } from '../../support/toy-stint.ts';

const few: Ranges = {
  'brakes.front.duct.recovery': [0.5, 1],
  'brakes.front.wheel.crossflow': [0.4, 1],
  'car.engine_braking_kW': [10, 80],
};
const toy = toyStint(few);
const drawn = (scenario: Scenario, draws = 12, seed = 5): Spread =>
  finished(spread(scenario, { draws, seed }));
const front = ({ corners }: Spread): CornerSpread => corners[0]!;

describe('the spread', () => {
  const found = drawn(toy);

  it('is the same for the same seed, to the last bit, and another for another', () => {
    expect(JSON.stringify(drawn(toy))).toBe(JSON.stringify(found));
    expect(front(drawn(toy, 12, 6)).hottest_K).not.toEqual(front(found).hottest_K);
  });

  it('says what it was made of', () => {
    expect(found).toMatchObject({ draws: 12, seed: 5, unknowns: 3 });
    expect(found.corners.map(({ axle, side }) => [axle, side])).toEqual([
      ['front', 'both'],
      ['rear', 'both'],
    ]);
    expect(front(found).laps.map(({ lap, counted }) => [lap, counted])).toEqual([
      [1, false],
      [2, true],
      [3, true],
    ]);
  });

  it('orders its quantiles on every lap, and none is a point', () => {
    for (const { facePeak_K, coldestStop_K } of found.corners.flatMap(({ laps }) => laps)) {
      for (const of of [facePeak_K, coldestStop_K!]) {
        const all = [of.p5, of.p10, of.p25, of.p50, of.p75, of.p90, of.p95];
        expect(all).toEqual([...all].sort((a, b) => a - b));
        expect(of.p95).toBeGreaterThan(of.p5);
      }
    }
  });

  it('runs each draw as its values would be run by hand, and counts what became of them', () => {
    const unknowns = unknownsOf(toy);
    const byHand = latinHypercube(12, unknowns.length, 5).map((shares) =>
      driven(
        changed(
          Object.fromEntries(
            unknowns.map((unknown, i) => [unknown.key, quantileTriangular(shares[i]!, unknown)]),
          ),
          toy,
        ),
      ),
    );
    const fronts = byHand.map((result) => corner(result, 'front'));
    expect(front(found).hottest_K).toEqual(fronts.map(({ verdict }) => verdict.facePeak_K));
    expect(front(found).coldest_K).toEqual(fronts.map(({ verdict }) => verdict.coldestStop_K));
    const many = (status: string): number => fronts.filter(({ verdict }) => verdict.status === status).length;
    const [cold, hot, both] = [many('cold'), many('hot'), many('both')];
    expect(front(found).count).toEqual({ in: many('in'), hot, cold, both, notJudged: 0 });
    const peaks = fronts.map(({ laps }) => laps[2]!.faceMax_K);
    expect(front(found).laps[2]!.facePeak_K).toEqual(quantilesOf(peaks));
    expect(front(found).stints).toEqual(
      fronts.map(({ verdict, laps }) => ({
        status: verdict.status,
        facePeak_K: laps.map(({ faceMax_K }) => faceMax_K),
        coldestStop_K: laps.map(({ coldestStop_K }) => coldestStop_K),
      })),
    );
  });

  it('counts draws on both sides of a limit that lies in the middle of them', () => {
    const peaks = [...front(found).hottest_K].sort((a, b) => a - b);
    const middle_C = (peaks[5]! + peaks[6]!) / 2 - 273.15;
    const limits = {
      'brakes.front.window.face_peak_C': middle_C - 50,
      'brakes.front.window.bulk_C': 1000,
      'brakes.front.window.bite_C': 0,
    };
    // what lasts under half a second and stays within 50 K is forgiven: that is the limit which is met here
    const { count } = front(drawn(changed(limits, toy)));
    expect(count.hot).toBeGreaterThanOrEqual(6);
    expect(count.in + count.hot).toBe(12);
  });

  it('of nothing in doubt is the run itself', () => {
    const sure = doubting(toy, {});
    const { verdict, laps } = corner(driven(sure), 'front');
    const { hottest_K, count, laps: spreadLaps } = front(drawn(sure, 3));
    expect(hottest_K).toEqual([verdict.facePeak_K, verdict.facePeak_K, verdict.facePeak_K]);
    expect(count[verdict.status as 'hot']).toBe(3);
    const peak = laps[1]!.faceMax_K;
    expect(spreadLaps[1]!.facePeak_K).toEqual(quantilesOf([peak]));
  });

  it('of ranges without width is the run itself', () => {
    const pinned = doubting(toy, { 'brakes.front.duct.recovery': [0.85, 0.85] });
    expect(front(drawn(pinned, 2)).hottest_K[1]).toBe(corner(driven(pinned), 'front').verdict.facePeak_K);
  });

  it('leaves an axle alone whose values nobody doubts', () => {
    const one = drawn(doubting(toy, { 'brakes.front.duct.recovery': [0.5, 1] }), 4);
    expect(new Set(one.corners[1]!.hottest_K).size).toBe(1);
    expect(new Set(front(one).hottest_K).size).toBe(4);
  });

  it('keeps the speed and heat of a held trace under the same draws', () => {
    const held = changed({ 'stint.hold_trace': true, 'conditions.ambient_C': 40 }, toy);
    const options = { driven: toy };
    const result = finished(spread(held, { draws: 3, seed: 1 }, options));
    expect(front(result).hottest_K).not.toEqual(front(drawn(held, 3, 1)).hottest_K);
  });

  it('keeps sides apart that differ', () => {
    const uneven = changed({ 'blanking_pct.front_left': 90, 'blanking_pct.front_right': 10 }, toy);
    const { corners } = drawn(uneven, 3);
    expect(corners.map(({ axle, side }) => `${axle} ${side}`)).toEqual([
      'front left',
      'front right',
      'rear both',
    ]);
    corners[0]!.hottest_K.forEach((hottest, i) => expect(hottest).toBeGreaterThan(corners[1]!.hottest_K[i]!));
  });

  it('says so where no lap counts', () => {
    const none = toyStint(few, { 'brakes.front.window.from_lap': 9 });
    expect(front(drawn(none, 3)).count).toEqual({ in: 0, hot: 0, cold: 0, both: 0, notJudged: 3 });
  });
});

describe('a doubted value', () => {
  const unknown = (key: string, scenario: Scenario) => unknownsOf(scenario).find((each) => each.key === key)!;
  const key = 'brakes.front.duct.recovery';

  it('moves what a side has of its own by as much', () => {
    const uneven = doubting(layOver(toy, sideRecovery(0.6)) as Scenario, few);
    const moved = supposing(uneven, [[unknown(key, uneven), 0.75]]);
    expect(valueAt(moved, key)).toBe(0.75);
    expect(valueAt(moved, 'sides.front_left.duct.recovery')).toBeCloseTo(0.5, 12);
  });

  it('does not leave the range of its key there', () => {
    const uneven = doubting(layOver(toy, sideRecovery(0.95)) as Scenario, few);
    const moved = supposing(uneven, [[unknown(key, uneven), 1]]);
    expect(valueAt(moved, 'sides.front_left.duct.recovery')).toBe(1);
  });

  it('moves what a phase sets by as much', () => {
    const balance = 'car.brake_balance_front';
    const phases = [
      { kind: 'push' as const, laps: 2 },
      { kind: 'push' as const, laps: 1, set: { [balance]: 0.6, 'conditions.ambient_C': 20 } },
    ];
    const set = doubting(withPhases(phases, 3, toy), { [balance]: [0.6, 0.7] });
    const moved = supposing(set, [[unknown(balance, set), 0.66]]);
    const [, last] = moved.stint.phases;
    expect(last!.set![balance]).toBeCloseTo(0.62, 12);
    expect(last!.set!['conditions.ambient_C']).toBe(20);
  });

  it('set beyond its range widens it', () => {
    const beyond = changed({ [key]: 0.3 }, toy);
    expect(unknown(key, beyond)).toMatchObject({ low: 0.3, likely: 0.3, high: 1 });
  });

  it('that is not there sleeps', () => {
    const without = doubting(
      { ...toy, brakes: { ...toy.brakes, front: { ...toy.brakes.front, duct: null } } },
      few,
    );
    expect(unknownsOf(without).map((each) => each.key)).toEqual([
      'brakes.front.wheel.crossflow',
      'car.engine_braking_kW',
    ]);
  });
});

const sideRecovery = (recovery: number): object => ({ sides: { front_left: { duct: { recovery } } } });

describe('quantiles', () => {
  it('lie between their neighbours', () => {
    expect(quantilesOf([30, 10, 20, 50, 40])).toEqual({
      p5: 12,
      p10: 14,
      p25: 20,
      p50: 30,
      p75: 40,
      p90: 46,
      p95: 48,
    });
  });

  it('of nothing are no number', () => {
    expect(quantile([], 0.5)).toBeNaN();
    expect(quantile([1, 2], 0.5)).toBe(1.5);
  });

  it('of one value are that value', () => {
    expect(quantilesOf([7])).toEqual({ p5: 7, p10: 7, p25: 7, p50: 7, p75: 7, p90: 7, p95: 7 });
  });
});
