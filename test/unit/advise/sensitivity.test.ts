import { describe, expect, it } from 'vitest';
import type { CornerSensitivity, Effect } from '../../../engine/advise/doubt.ts';
import { finished } from '../../../engine/advise/finished.ts';
import { sensitivity } from '../../../engine/advise/sensitivity.ts';
import type { Scenario } from '../../../engine/scenario/schema.ts';
import { changed, corner, driven } from '../../support/stints.ts';
import { doubting, toyStint } from '../../support/toy-stint.ts';

const toy = toyStint({
  'traffic.wake_strength': [0.5, 1.5],
  'brakes.front.duct.recovery': [0.5, 1],
  'brakes.front.wheel.crossflow': [0.4, 1],
  'brakes.front.pad.disc_share': [0.94, 0.96],
  'brakes.rear.wheel.crossflow': [0.5, 1],
  'car.brake_balance_front': [0.6, 0.68],
});
const [front, rear] = finished(sensitivity(toy)) as [CornerSensitivity, CornerSensitivity];
const effect = ({ effects }: CornerSensitivity, key: string): Effect =>
  effects.find((each) => each.key === key)!;

describe('one unknown at a time', () => {
  it('a better inlet cools the face and the coldest stop, a worse one heats both', () => {
    const { atLow, atHigh } = effect(front, 'brakes.front.duct.recovery');
    expect(atHigh.facePeak_K).toBeLessThan(-1);
    expect(atHigh.coldestStop_K).toBeLessThan(-1);
    expect(atLow.facePeak_K).toBeGreaterThan(1);
    expect(atLow.hotMargin_K).toBeLessThan(-1);
    expect(atLow.coldMargin_K).toBeGreaterThan(1);
  });

  it('heat that the disc does not take leaves it cooler', () => {
    const { atLow, atHigh } = effect(front, 'brakes.front.pad.disc_share');
    expect(atLow.facePeak_K).toBeLessThan(0);
    expect(atHigh.facePeak_K).toBeGreaterThan(0);
  });

  it('balance to the front heats the front and cools the rear', () => {
    expect(effect(front, 'car.brake_balance_front').atHigh.facePeak_K).toBeGreaterThan(5);
    expect(effect(rear, 'car.brake_balance_front').atHigh.facePeak_K).toBeLessThan(-5);
  });

  it('is the run with that value against the run without', () => {
    const key = 'brakes.rear.wheel.crossflow';
    const [likely, low] = [toy, changed({ [key]: 0.5 }, toy)].map(
      (each) => corner(driven(each), 'rear').verdict,
    );
    expect(effect(rear, key).atLow.facePeak_K).toBe(low!.facePeak_K - likely!.facePeak_K);
    expect(effect(rear, key).atLow.hotMargin_K).toBe(low!.hotMargin_K - likely!.hotMargin_K);
  });

  it('moves nothing with a wake in clear air', () => {
    const { atLow, atHigh, moves_K } = effect(front, 'traffic.wake_strength');
    expect([atLow.facePeak_K, atHigh.facePeak_K, moves_K]).toEqual([0, 0, 0]);
  });
});

describe('what to measure first', () => {
  it('is what moves the margin that fails first by most', () => {
    expect(front.failsFirst).toBe('hot');
    const sizes = front.effects.map(({ moves_K }) => moves_K);
    expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
    expect(front.measureFirst).toBe(front.effects[0]);
    const { atLow, atHigh, moves_K } = front.measureFirst!;
    const margins = [0, atLow.hotMargin_K, atHigh.hotMargin_K];
    expect(moves_K).toBe((Math.max(...margins) - Math.min(...margins)) / 2);
  });

  it('speaks of the cold margin where that fails first', () => {
    const hard: Scenario = changed(
      {
        'brakes.front.window.bite_C': 640,
        'brakes.front.window.face_peak_C': 1000,
        'brakes.front.window.bulk_C': 1000,
      },
      toy,
    );
    const [cold] = finished(sensitivity(hard));
    expect(cold!.failsFirst).toBe('cold');
    const { atLow, atHigh, moves_K } = cold!.measureFirst!;
    const margins = [0, atLow.coldMargin_K, atHigh.coldMargin_K];
    expect(moves_K).toBe((Math.max(...margins) - Math.min(...margins)) / 2);
  });

  it('an axle does not hear of the other axle’s brake', () => {
    expect(front.effects.map(({ key }) => key)).not.toContain('brakes.rear.wheel.crossflow');
    expect(rear.effects.map(({ key }) => key).sort()).toEqual([
      'brakes.rear.wheel.crossflow',
      'car.brake_balance_front',
      'traffic.wake_strength',
    ]);
  });

  it('is nothing where nothing is in doubt, or nothing matters', () => {
    const sure = finished(sensitivity(doubting(toy, {})));
    expect(sure.map(({ measureFirst }) => measureFirst)).toEqual([null, null]);
    const idle = finished(sensitivity(doubting(toy, { 'traffic.wake_strength': [0, 2] })));
    expect(idle[0]!.measureFirst).toBeNull();
    expect(idle[0]!.effects).toHaveLength(1);
  });
});
