import { describe, expect, it } from 'vitest';
import { checkScenario, parseScenario } from '../../../engine/scenario/parse.ts';
import { problemLine } from '../../../engine/scenario/problem.ts';
import type { Phase } from '../../../engine/scenario/schema.ts';
import type { StintResult } from '../../../engine/stint/result.ts';
import { textOf } from '../../support/tree.ts';
import { changed, corner, driven, withPhases } from '../../support/stints.ts';

type Set = NonNullable<Phase['set']>;
const push: Phase = { kind: 'push', laps: 5 };
const stop = (set: Set = {}): Phase => ({ kind: 'stand', duration_s: 45, brake_held: false, set });
/** Five laps, a stop that may change something, five laps, five more as another phase. */
const withStop = (set?: Set): StintResult => driven(withPhases([push, stop(set), push, push], 15));

const plain = withStop();
const laps = (result: StintResult, axle: 'front' | 'rear' = 'front') => corner(result, axle).laps;
const peaks = (result: StintResult, axle?: 'front' | 'rear'): number[] =>
  laps(result, axle).map(({ faceMax_K }) => faceMax_K);

describe('tape that comes off at a stop', () => {
  const off = withStop({ 'blanking_pct.front': 40 });

  it('cools the front from the stop on and not before', () => {
    const [before, after] = [peaks(plain), peaks(off)];
    expect(after.slice(0, 5)).toEqual(before.slice(0, 5));
    after.slice(7).forEach((peak, i) => expect(peak, `lap ${i + 8}`).toBeLessThan(before[i + 7]! - 30));
    expect(laps(off)[9]!.bulkMean_K).toBeLessThan(laps(plain)[9]!.bulkMean_K - 30);
  });

  it('stays off in the phases after, which come to what a stint with that tape comes to', () => {
    expect(off.phases.map(({ blanking_pct }) => blanking_pct.front)).toEqual([70, 40, 40, 40]);
    expect(off.phases.map(({ changed }) => changed)).toEqual([[], ['blanking_pct'], [], []]);
    const open = driven(withPhases([push, stop(), push, push], 15, changed({ 'blanking_pct.front': 40 })));
    expect(Math.abs(peaks(off)[14]! - peaks(open)[14]!)).toBeLessThan(1);
  });

  it('leaves the rear alone', () => expect(peaks(off, 'rear')).toEqual(peaks(plain, 'rear')));
});

describe('the brake held at a stop', () => {
  it('heats the caliper more and takes it from the disc', () => {
    const held = driven(withPhases([push, { kind: 'stand', duration_s: 300, brake_held: true }], 5));
    const free = driven(withPhases([push, { kind: 'stand', duration_s: 300, brake_held: false }], 5));
    expect(held.phases.map(({ brakeHeld }) => brakeHeld)).toEqual([false, true]);
    const last = (result: StintResult, column: 'caliper_K' | 'cheek_K'): number =>
      corner(result, 'front').columns![column].at(-1)!;
    expect(last(held, 'caliper_K')).toBeGreaterThan(last(free, 'caliper_K') + 2);
    expect(last(held, 'cheek_K')).toBeLessThan(last(free, 'cheek_K'));
  });
});

describe('what else a phase changes from there on', () => {
  it('rain: slower, cooler, and named on each lap', () => {
    const wet = withStop({ 'conditions.wet': true });
    expect(wet.laps.map((lap) => lap.wet)).toEqual([
      ...new Array(5).fill(false),
      ...new Array(10).fill(true),
    ]);
    expect(peaks(plain)[14]! - peaks(wet)[14]!).toBeGreaterThan(60);
    const time = ({ laps }: StintResult): number => laps[13]!.end_s - laps[13]!.start_s;
    expect(time(wet)).toBeGreaterThan(time(plain) + 5);
  });

  it('a track that dries: back to the dry stint within four laps', () => {
    const dried = driven(
      withPhases(
        [
          { ...push, set: { 'conditions.wet': true } },
          { kind: 'push', laps: 8, set: { 'conditions.wet': false } },
        ],
        13,
      ),
    );
    expect(dried.phases.map(({ wet }) => wet)).toEqual([true, false]);
    expect(dried.phases.map(({ changed }) => changed)).toEqual([['wet'], ['wet']]);
    expect(Math.abs(peaks(dried)[12]! - peaks(plain)[13]!)).toBeLessThan(12);
  });

  it('colder air cools all corners a little', () => {
    const cold = withStop({ 'conditions.ambient_C': 16 });
    expect(cold.laps.map((lap) => Math.round(lap.ambient_K - 273.15))).toEqual([
      ...new Array(5).fill(26),
      ...new Array(10).fill(16),
    ]);
    for (const axle of ['front', 'rear'] as const)
      expect(peaks(cold, axle)[14]).toBeLessThan(peaks(plain, axle)[14]!);
    expect(cold.phases[1]!.changed).toEqual(['ambient_K']);
  });

  it('brake balance moves heat from one axle to the other', () => {
    const rearward = withStop({ 'car.brake_balance_front': 0.6 });
    expect(peaks(rearward)[14]).toBeLessThan(peaks(plain)[14]! - 15);
    expect(peaks(rearward, 'rear')[14]).toBeGreaterThan(peaks(plain, 'rear')[14]! + 15);
    expect(rearward.clock).toEqual(plain.clock);
    expect(rearward.phases.map(({ balance }) => balance)).toEqual([0.64, 0.6, 0.6, 0.6]);
  });

  it('a gap is the phase’s own and does not hold on', () => {
    const traffic = driven(withPhases([push, { ...push, gap_m: 8 }, push], 15));
    expect(traffic.phases.map(({ gap }) => gap?.gap_m ?? null)).toEqual([null, 8, null]);
    expect(traffic.phases.map(({ changed }) => changed)).toEqual([[], ['gap'], ['gap']]);
  });
});

describe('the laps of the result', () => {
  it('name the phase they belong to', () => {
    expect(plain.phases.map(({ index }) => index)).toEqual([0, 1, 2, 3]);
    expect(plain.laps.map(({ phase }) => phase)).toEqual(
      [0, 2, 3].flatMap((phase) => new Array(5).fill(phase)),
    );
    for (const { lap, phase } of plain.laps) {
      const [first, last] = plain.phases[phase]!.laps!;
      expect(first <= lap && lap <= last).toBe(true);
    }
  });

  it('skip a phase that has no laps left', () => {
    const phases: Phase[] = [push, { kind: 'push', laps: null, gap_m: 5 }, { kind: 'in', laps: 1 }];
    const result = driven(withPhases(phases, 6));
    expect(result.phases.map(({ index, kind }) => [index, kind])).toEqual([
      [0, 'push'],
      [2, 'in'],
    ]);
    expect(result.laps.at(-1)!.phase).toBe(1);
  });
});

describe('the phases that the README shows', () => {
  it('are a stint that can be driven', () => {
    const [, json = ''] = /```json\n(.*?)```/s.exec(textOf('README.md')) ?? [];
    const parsed = parseScenario(JSON.parse(json));
    if (!parsed.ok) throw new Error(parsed.problems.map(problemLine).join('\n'));
    expect(driven(parsed.scenario).phases.map(({ changed }) => changed)).toEqual([
      [],
      ['gap'],
      ['gap'],
      ['blanking_pct', 'fuel_kg', 'driver'],
      [],
      [],
      ['wet'],
    ]);
  });
});

describe('what a phase may not change', () => {
  it.each(['car.mass_kg', 'brakes.front.duct.hoses', 'conditions.wind', 'stint.laps', 'driver'])(
    '%s',
    (key) => {
      const scenario = changed({});
      const phases = [{ ...push, set: { [key]: 1 } }];
      const checked = checkScenario({ ...scenario, stint: { ...scenario.stint, laps: 5, phases } });
      expect(checked.ok ? [] : checked.problems.map(problemLine)).toEqual([
        expect.stringMatching(
          `stint.phases.0.set.${key}: expected a key of conditions, blanking_pct or driver`,
        ),
      ]);
    },
  );

  it.each([
    ['blanking_pct.front', 140],
    ['car.fuel_kg', -1],
    ['conditions.ambient_C', 300],
    ['conditions.wet', 3],
    ['driver.coast_s', null],
  ])('%s to %j, which is out of its range', (key, value) => {
    const scenario = changed({});
    const phases = [{ ...push, set: { [key]: value } }];
    const checked = checkScenario({ ...scenario, stint: { ...scenario.stint, laps: 5, phases } });
    expect(checked.ok ? [] : checked.problems.map(({ key: at }) => at)).toEqual([
      `stint.phases.0.set.${key}`,
    ]);
  });
});
