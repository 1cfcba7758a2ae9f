import { describe, expect, it } from 'vitest';
import { brakeHeat } from '../../../engine/car/brake-heat.ts';
import { cleanTrace, timeFromDistance } from '../../../engine/circuit/clean-trace.ts';
import { layoutCircuit } from '../../../engine/circuit/layout.ts';
import { speedProfile } from '../../../engine/circuit/speed-profile.ts';
import {
  circuits,
  heavyCar,
  heavyDriver,
  lightCar,
  lightDriver,
  logged,
  warmDay,
} from '../../support/driving.ts';

const level = <T extends { slope: Float64Array }>(lap: T): T => ({ ...lap, slope: lap.slope.map(() => 0) });
const driven = (id: keyof typeof circuits, car = heavyCar, driver = heavyDriver) =>
  level(speedProfile({ layout: layoutCircuit(circuits[id]), car, driver, air: warmDay }));
const heatOf = (lap: Parameters<typeof brakeHeat>[0], car = heavyCar): number =>
  brakeHeat(lap, car, warmDay).total_J;

describe('a lap logged at 10 Hz with 0.1 m/s of noise', () => {
  const laps = [
    { id: 'sorrelby', which: 'heavy', lap: driven('sorrelby'), car: heavyCar },
    { id: 'slow', which: 'heavy', lap: driven('slow'), car: heavyCar },
    { id: 'slow', which: 'light', lap: driven('slow', lightCar, lightDriver), car: lightCar },
  ] as const;

  it.each(laps)('keeps its brake heat within 2 % ($id, $which car, ten seeds)', ({ lap, car }) => {
    const heat_J = heatOf(lap, car);
    for (let seed = 1; seed <= 10; seed++) {
      const read = cleanTrace(logged(lap, { rate_Hz: 10, noise_mps: 0.1, seed }));
      expect(Math.abs(heatOf(read, car) / heat_J - 1)).toBeLessThan(0.02);
    }
  });

  it('keeps each heavy stop within 3 percent and its highest power within 10', () => {
    const lap = driven('sorrelby');
    const read = cleanTrace(logged(lap, { rate_Hz: 10, noise_mps: 0.1, seed: 3 }));
    const power = (profile: typeof lap): Float64Array => brakeHeat(profile, heavyCar, warmDay).power_W;
    // a fit over a second blurs the top of a stop that lasts one; what it does to the disc is held by the round trip's law
    expect(Math.abs(Math.max(...power(read)) / Math.max(...power(lap)) - 1)).toBeLessThan(0.1);
    const turn7 = layoutCircuit(circuits.sorrelby).corners.find(({ name }) => name === 'turn 7')!;
    const inTurn7 = (profile: typeof lap): number => {
      const heat = brakeHeat(profile, heavyCar, warmDay).cumulative_J;
      const at = (s: number): number => heat[profile.distance_m.findIndex((d) => d >= s)]!;
      return at(turn7.to_m) - at(turn7.from_m - 250);
    };
    expect(inTurn7(lap)).toBeGreaterThan(1.5e6);
    expect(Math.abs(inTurn7(read) / inTurn7(lap) - 1)).toBeLessThan(0.03);
  });

  it('keeps length and time', () => {
    const lap = driven('sorrelby');
    const read = cleanTrace(logged(lap, { rate_Hz: 10, noise_mps: 0.1, seed: 5 }));
    expect(Math.abs(read.time_s.at(-1)! - lap.time_s.at(-1)!)).toBeLessThan(0.11);
    expect(Math.abs(read.distance_m.at(-1)! / lap.distance_m.at(-1)! - 1)).toBeLessThan(0.003);
  });
});

describe('noise', () => {
  const held = (speed_mps: number) => {
    const time_s = Float64Array.from({ length: 901 }, (_, i) => i / 10);
    const zero = new Float64Array(901);
    const profile = { distance_m: zero, time_s, speed_mps: time_s.map(() => speed_mps) };
    return { ...profile, accel_mps2: zero, curvature_pm: zero, slope: zero };
  };

  it.each([20, 40, 60])('on a held speed of %d m/s is under 0.1 %% of the heat of a lap', (speed_mps) => {
    for (let seed = 1; seed <= 5; seed++) {
      const read = cleanTrace(logged(held(speed_mps), { rate_Hz: 10, noise_mps: 0.1, seed }));
      expect(heatOf(read)).toBeLessThan(5000);
    }
  });

  it('does not hide light braking', () => {
    const steady = held(60);
    const slowing_mps = steady.time_s.map((t) => 60 - 3 * Math.min(4, Math.max(0, t - 30)));
    const lap = { ...steady, speed_mps: slowing_mps };
    const exact = cleanTrace({ time_s: lap.time_s, speed_mps: slowing_mps }, { halfWindow_s: 0.2 });
    const read = cleanTrace(logged(lap, { rate_Hz: 10, noise_mps: 0.1, seed: 8 }));
    expect(heatOf(exact)).toBeGreaterThan(2e5);
    expect(Math.abs(heatOf(read) / heatOf(exact) - 1)).toBeLessThan(0.05);
  });

  it('of a single false sample is taken out', () => {
    const lap = driven('sorrelby');
    const trace = logged(lap, { rate_Hz: 10, noise_mps: 0, seed: 1 });
    trace.speed_mps[400]! -= 25;
    expect(Math.abs(heatOf(cleanTrace(trace)) / heatOf(lap) - 1)).toBeLessThan(0.01);
  });
});

describe('the other kinds of trace', () => {
  it('takes distance in place of time', () => {
    const lap = driven('slow');
    const read = cleanTrace({ distance_m: lap.distance_m, speed_mps: lap.speed_mps });
    expect(read.time_s.at(-1)).toBeCloseTo(lap.time_s.at(-1)!, 6);
    expect(Math.abs(heatOf(read) / heatOf(lap) - 1)).toBeLessThan(0.01);
  });

  it('finds time from distance exactly where the acceleration is constant', () => {
    const time = timeFromDistance(Float64Array.of(0, 75, 200), Float64Array.of(10, 20, 30));
    expect(Array.from(time)).toEqual([0, 5, 10]);
  });

  it('finds the slope of a logged altitude', () => {
    const time_s = Float64Array.from({ length: 600 }, (_, i) => i / 10);
    const speed_mps = time_s.map(() => 40);
    const read = cleanTrace({ time_s, speed_mps, height_m: time_s.map((t) => 0.03 * 40 * t) });
    expect(read.slope[600]).toBeCloseTo(0.03, 6);
  });
});
