import { describe, expect, it } from 'vitest';
import type { CornerSensitivity, Effect } from '../../../engine/index.ts';
import { defaultScenario, withCar } from '../../../engine/scenario/library.ts';
import { toMeasure } from '../../../web/display/measure-words.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const shift = (facePeak_K: number, coldestStop_K: number | null = 0): Effect['atLow'] => ({
  facePeak_K,
  coldestStop_K,
  hotMargin_K: -facePeak_K,
  coldMargin_K: coldestStop_K ?? 0,
});
const effect = (key: string, moves_K: number, parts: Partial<Effect> = {}): Effect => ({
  key,
  low: 1.2,
  likely: 1.6,
  high: 2.2,
  reason: 'casting roughness',
  atLow: shift(44, 30),
  atHigh: shift(-35, -20),
  moves_K,
  ...parts,
});
const found = (failsFirst: 'hot' | 'cold', ...effects: Effect[]): CornerSensitivity[] => [
  { axle: 'front', side: 'both', failsFirst, effects, measureFirst: effects[0] ?? null },
];
const front = { axle: 'front', side: 'both' } as const;

describe('what to measure first', () => {
  it('says what each moves, at which end, why it is unsure and how to measure it', () => {
    const [first] = toMeasure(found('hot', effect('brakes.front.disc.vane_enhancement', 54)), front);
    expect(plain(first!.moves)).toBe('±54 K');
    expect(plain(first!.ends)).toBe('At 1.2 the face peak is 44 K hotter, at 2.2 it is 35 K cooler.');
    expect(first!.why).toBe('Taken as 1.6; unsure: casting roughness.');
    expect(first!.how).toMatch(/^Log the disc on a long straight/);
  });

  it('speaks of the coldest stop where cold fails first', () => {
    const [first] = toMeasure(found('cold', effect('brakes.front.duct.recovery', 20)), front);
    expect(plain(first!.ends)).toBe('At 1.2 the coldest stop is 30 K warmer, at 2.2 it is 20 K colder.');
    const none = effect('brakes.front.duct.recovery', 20, { atLow: shift(1, null) });
    expect(toMeasure(found('cold', none), front)[0]!.ends).toBe('');
  });

  it('tells three at most, and none that moves less than a word’s worth', () => {
    const keys = ['duct.recovery', 'duct.leak_cm2', 'wheel.crossflow', 'pad.drag_N'];
    const many = keys.map((key, i) => effect(`brakes.front.${key}`, 40 - i));
    expect(toMeasure(found('hot', ...many), front)).toHaveLength(3);
    expect(toMeasure(found('hot', effect('car.drag_area_m2', 0.4)), front)).toEqual([]);
    expect(toMeasure(found('hot', ...many), { axle: 'rear', side: 'both' })).toEqual([]);
  });

  it('knows a way for everything that the shipped cars doubt', () => {
    for (const scenario of [defaultScenario(), withCar(defaultScenario(), 'light')]) {
      for (const key of Object.keys(scenario.doubt)) {
        expect(toMeasure(found('hot', effect(key, 10)), front)[0]!.how, key).not.toBe('');
      }
    }
  });
});
