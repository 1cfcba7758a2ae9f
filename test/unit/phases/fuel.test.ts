import { describe, expect, it } from 'vitest';
import type { Phase, Scenario } from '../../../engine/scenario/schema.ts';
import { compile } from '../../../engine/stint/compile.ts';
import { lapLength } from '../../../engine/stint/motion.ts';
import { changed, corner, driven, held, withPhases } from '../../support/stints.ts';

const DRY_KG = 1300;
const burn_kg = (0.48 * lapLength(changed({}))) / 1000;
const push = (laps: number, set = {}): Phase => ({ kind: 'push', laps, set });
const stop = (set = {}): Phase => ({ kind: 'stand', duration_s: 60, brake_held: false, set });

/** Mass half way round each lap [kg] */
const masses = (scenario: Scenario): number[] =>
  compile(scenario).passages.flatMap((one) =>
    one.kind === 'stand' ? [] : [one.massRatio * one.plan.mass_kg],
  );

const expectMasses = (phases: Phase[], laps: number, fuel: number[]): void => {
  const found = masses(withPhases(phases, laps));
  expect(found).toHaveLength(fuel.length);
  found.forEach((mass, i) => expect(mass, `lap ${i + 1}`).toBeCloseTo(DRY_KG + fuel[i]!, 9));
};

describe('fuel on board half way round each lap', () => {
  const from = (filled_kg: number, lap: number): number => filled_kg - (lap - 0.5) * burn_kg;

  it('falls from the scenario’s by one lap’s burn a lap', () => {
    expectMasses(
      [push(2), stop(), push(2)],
      4,
      [1, 2, 3, 4].map((lap) => from(75, lap)),
    );
  });

  it('starts anew at a stop that sets it', () => {
    const fuel = [from(75, 1), from(75, 2), from(60, 1), from(60, 2), from(60, 3)];
    expectMasses([push(2), stop({ 'car.fuel_kg': 60 }), push(1), push(2)], 5, fuel);
  });

  it('starts anew at a lap phase that sets it, and at each filling', () => {
    const phases = [
      push(1, { 'car.fuel_kg': 20 }),
      stop({ 'car.fuel_kg': 90 }),
      push(1),
      push(2, { 'car.fuel_kg': 10 }),
    ];
    expectMasses(phases, 4, [from(20, 1), from(90, 1), from(10, 1), from(10, 2)]);
  });

  it('never falls below none', () => {
    const dry = masses(withPhases([push(8, { 'car.fuel_kg': 6 })], 8));
    expect(Math.min(...dry)).toBe(DRY_KG);
    expect(dry.filter((mass) => mass === DRY_KG).length).toBeGreaterThan(4);
  });

  it('is named as each phase begins, and as new only where it was filled', () => {
    const { phases } = driven(withPhases([push(2), stop({ 'car.fuel_kg': 75 }), push(2)], 4));
    expect(phases.map((phase) => phase.fuel_kg)).toEqual([75, 75, 75]);
    expect(phases.map(({ changed }) => changed.includes('fuel_kg'))).toEqual([false, true, false]);
    const burnt = driven(withPhases([push(2), push(2)], 4)).phases[1]!;
    expect(burnt.fuel_kg).toBeCloseTo(75 - 2 * burn_kg, 9);
    expect(burnt.changed).toEqual([]);
  });
});

describe('what fuel does', () => {
  it('more of it at the stop makes the laps after it slower and hotter, and none before', () => {
    const [light, heavy] = [20, 90].map((kg) =>
      driven(withPhases([push(3), stop({ 'car.fuel_kg': kg }), push(6)], 9)),
    );
    const time = (result: typeof light, lap: number): number => {
      const { start_s, end_s } = result!.laps[lap - 1]!;
      return end_s - start_s;
    };
    const peak = (result: typeof light, lap: number): number =>
      corner(result!, 'front').laps[lap - 1]!.faceMax_K;
    expect(peak(heavy, 3)).toBe(peak(light, 3));
    expect(time(heavy, 8) - time(light, 8)).toBeGreaterThan(0.5);
    expect(peak(heavy, 9) - peak(light, 9)).toBeGreaterThan(10);
  });

  it('is held with the trace', () => {
    const base = driven(changed({}));
    expect(corner(held({ 'car.fuel_kg': 20 }), 'front').facePeak_K).toBe(corner(base, 'front').facePeak_K);
  });
});
