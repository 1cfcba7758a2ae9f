/** Both shipped cars on the fast circuit, as practice is asked of them. */
import { expect } from 'vitest';
import { defaultScenario, withCar } from '../../engine/scenario/library.ts';
import type { Changes } from '../../engine/scenario/override.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import type { Axle, LapSummary, StintResult } from '../../engine/stint/result.ts';
import { changed, driven, held, settled } from './stints.ts';

export interface TradeCar {
  name: 'heavy' | 'light';
  base: Scenario;
  result: StintResult;
  front: LapSummary;
  rear: LapSummary;
  /** What the car settles to with changes, driven anew. */
  anew: (changes: Changes, axle?: Axle) => LapSummary;
  /** The same under the speed and the heat it had before. */
  held: (changes: Changes, axle?: Axle) => LapSummary;
}

function tradeCar(name: TradeCar['name'], base: Scenario): TradeCar {
  const result = driven(base);
  return {
    name,
    base,
    result,
    front: settled(result, 'front'),
    rear: settled(result, 'rear'),
    anew: (changes, axle = 'front') => settled(driven(changed(changes, base)), axle),
    held: (changes, axle = 'front') => settled(held(changes, base), axle),
  };
}

export const heavy = tradeCar('heavy', defaultScenario());
export const light = tradeCar(
  'light',
  changed({ 'conditions.ambient_C': 22 }, withCar(defaultScenario(), 'light')),
);
export const bothCars = [heavy, light];

export type Range = readonly [low: number, high: number];

export function expectWithin(value: number, [low, high]: Range, what = ''): void {
  expect(value, what).toBeGreaterThanOrEqual(low);
  expect(value, what).toBeLessThanOrEqual(high);
}

export const scaled = ([low, high]: Range, by: number): Range => [low * by, high * by];
