import { describe, expect, it } from 'vitest';
import type { Changes } from '../../../engine/scenario/override.ts';
import type { AirRow } from '../../../engine/stint/result.ts';
import { kmhFromMps } from '../../../engine/units.ts';
import { changed, corner, driven } from '../../support/stints.ts';
import { bothCars, expectWithin, heavy, light, type TradeCar } from '../../support/trade.ts';

/** Air of the front corner with an open mouth and the tightest leak, at a speed of the table. */
function openAir({ base }: TradeCar, kmh: number): AirRow {
  const tightest = { 'brakes.front.duct.leak_cm2': base.doubt['brakes.front.duct.leak_cm2']!.low };
  const { air } = corner(driven(changed({ ...tightest, 'blanking_pct.front': 0 }, base)), 'front');
  return air.find(({ speed_mps }) => Math.round(kmhFromMps(speed_mps)) === kmh)!;
}

describe('the air of an open front duct (common practice, no source)', () => {
  it.each([
    ['heavy', heavy, 0.248],
    ['light', light, 0.091],
  ] as const)('is about what practice measures, %s car', (_, car, kgps) => {
    expect(Math.abs(openAir(car, 200).ductFlow_kgps / kgps - 1)).toBeLessThan(0.15);
  });

  it.each(bothCars)('is linear in speed, $name car', (car) => {
    expect(openAir(car, 200).ductFlow_kgps / openAir(car, 100).ductFlow_kgps).toBeCloseTo(2, 6);
  });

  it('of each large hose is what practice says', () => {
    const { hoses } = heavy.base.brakes.front.duct!;
    expectWithin(openAir(heavy, 200).ductFlow_kgps / hoses, [0.08, 0.15]);
    expectWithin((openAir(heavy, 100).ductFlow_kgps * 1.5) / hoses, [0.06, 0.11]);
  });

  it.each(bothCars)('costs a pair of ducts little drag and power at most, $name car', (car) => {
    const { drag_N, dragPower_W } = openAir(car, 200);
    // the light car's is a third of that: about 9 N and 0.5 kW
    expectWithin(2 * drag_N, car === heavy ? [20, 28] : [7, 12]);
    expectWithin(2 * dragPower_W, car === heavy ? [1100, 1500] : [390, 670]);
  });
});

describe('hoses that are lost, added or crushed (common practice, no source)', () => {
  const OPEN = { 'blanking_pct.front': 0 };
  const over = (car: TradeCar, change: Changes, from: Changes = OPEN): number =>
    car.held({ ...from, ...change }).faceMax_K - car.held(from).faceMax_K;

  it('one of two hoses fewer heats the heavy car’s front', () => {
    expectWithin(over(heavy, { 'brakes.front.duct.hoses': 1 }), [50, 100]);
  });

  // Practice says 50 to 100 K for a second hose, and means one with a mouth to feed it; a smaller disc on a smaller hose
  // gains two thirds of that.
  it('a second hose with a mouth of its own cools the light car’s', () => {
    const { mouth_width_mm } = light.base.brakes.front.duct!;
    const second = { 'brakes.front.duct.hoses': 2, 'brakes.front.duct.mouth_width_mm': 2 * mouth_width_mm };
    expectWithin(-over(light, second), [33, 100]);
  });

  // about 30 K
  it.each(bothCars)('crushed hoses heat the front, $name car', (car) => {
    expectWithin(over(car, { 'brakes.front.duct.hose_friction': 0.2 }), [15, 60]);
  });

  // Practice says 80 to 150 K, and in its table of settled temperatures 232 K from 70 to 100 % of the heavy car: a duct that is
  // most of the cooling costs more than 150 K when it goes.
  it.each([
    ['heavy', heavy, [180, 280]],
    ['light', light, [80, 150]],
  ] as const)('a blocked mouth heats the front much, %s car', (_, car, range) => {
    expectWithin(over(car, { 'blanking_pct.front': 100 }, {}), range);
  });
});
