import { describe, expect, it } from 'vitest';
import { brakeHeat } from '../../../engine/car/brake-heat.ts';
import { cleanTrace } from '../../../engine/circuit/clean-trace.ts';
import { accelHalfWindow, noiseOf, speedHalfWindow } from '../../../engine/circuit/fit-window.ts';
import { layoutCircuit } from '../../../engine/circuit/layout.ts';
import { localQuadratic } from '../../../engine/circuit/local-quadratic.ts';
import { speedProfile, type SpeedProfile } from '../../../engine/circuit/speed-profile.ts';
import { kmhFromMps, mpsFromKmh } from '../../../engine/units.ts';
import {
  circuits,
  gaussian,
  heavyCar,
  heavyDriver,
  logged,
  uniform,
  warmDay,
} from '../../support/driving.ts';

const lap = speedProfile({
  layout: layoutCircuit(circuits.sorrelby),
  car: heavyCar,
  driver: heavyDriver,
  air: warmDay,
});
const inSteps = (speed_mps: Float64Array): Float64Array =>
  speed_mps.map((v) => mpsFromKmh(Math.round(kmhFromMps(v))));

describe('the noise of a driven lap', () => {
  it.each([
    [10, 0.05],
    [10, 0.2],
    [100, 0.1],
  ])('at %i Hz is found: %f m/s', (rate_Hz, noise_mps) => {
    const { speed_mps } = logged(lap, { rate_Hz, noise_mps, seed: 3 });
    expect(Math.abs(noiseOf(speed_mps, 98).deviation / noise_mps - 1)).toBeLessThan(0.1);
  });

  it('is the error of rounding where a logger writes whole km/h, however often', () => {
    const { speed_mps } = logged(lap, { rate_Hz: 100, noise_mps: 0, seed: 1 });
    const { deviation, interval_s } = noiseOf(inSteps(speed_mps), 98);
    expect(deviation).toBeCloseTo(mpsFromKmh(1) / Math.sqrt(12), 6);
    expect(interval_s).toBeGreaterThan(0.03);
  });

  it('is that of the slow channel where a fast file repeats each value', () => {
    const slow = logged(lap, { rate_Hz: 10, noise_mps: 0.1, seed: 2 }).speed_mps;
    const fast = Float64Array.from({ length: 5 * slow.length }, (_, i) => slow[Math.floor(i / 5)]!);
    expect(noiseOf(fast, 98).deviation).toBeCloseTo(noiseOf(slow, 98).deviation, 9);
    expect(noiseOf(fast, 98).interval_s).toBeCloseTo(noiseOf(slow, 98).interval_s, 9);
  });
});

/** Pure noise through the fit: deviation of what is left, of values or of their change over a second. */
function left(deviation: number, halfWindow: number, of: 'values' | 'changes'): number {
  const noise = gaussian(uniform(11));
  const x = Float64Array.from({ length: 40_000 }, (_, i) => i / 50);
  const y = x.map(() => deviation * noise());
  const { value } = localQuadratic({ x, y, at: x, halfWindow });
  const seen = of === 'values' ? value : value.subarray(1).map((v, i) => (v - value[i]!) * 50);
  return Math.sqrt(seen.reduce((sum, v) => sum + v * v, 0) / seen.length);
}

describe('the window leaves a known noise in the acceleration', () => {
  const interval_s = 0.02;

  it('0.25 m/s² of a logged speed', () => {
    const noise = { deviation: 0.1, interval_s };
    expect(Math.abs(left(0.1, speedHalfWindow(noise), 'changes') / 0.25 - 1)).toBeLessThan(0.03);
  });

  it('0.5 m/s² of an accelerometer', () => {
    const noise = { deviation: 1, interval_s };
    expect(Math.abs(left(1, accelHalfWindow(noise), 'values') / 0.5 - 1)).toBeLessThan(0.03);
  });
});

describe('the heat of a logged lap, whatever the logger', () => {
  const rates = [5, 10, 20, 50, 100];
  const ids = ['sorrelby', 'long', 'slow'] as const;
  const loggers = rates.flatMap((rate_Hz) =>
    ids.map((id) => ({ rate_Hz, id, within: rate_Hz > 5 ? 1 : 2.1 })),
  );

  it.each(loggers)(
    'is right within $within % at $rate_Hz Hz on $id: quiet, noisy, in km/h steps',
    (logger) => {
      const { rate_Hz, id, within } = logger;
      const profile = speedProfile({
        layout: layoutCircuit(circuits[id]),
        car: heavyCar,
        driver: heavyDriver,
        air: warmDay,
      });
      const level = { ...profile, slope: profile.slope.map(() => 0) };
      const heatOf = (of: SpeedProfile): number => brakeHeat(of, heavyCar, warmDay).total_J;
      for (const noise_mps of [0, 0.05, 0.1, null]) {
        const trace = logged(level, { rate_Hz, noise_mps: noise_mps ?? 0, seed: 7 });
        if (noise_mps === null) trace.speed_mps = inSteps(trace.speed_mps);
        const off_pct = 100 * (heatOf(cleanTrace(trace)) / heatOf(level) - 1);
        expect(Math.abs(off_pct), `noise ${noise_mps ?? 'of rounding'}`).toBeLessThan(within);
      }
    },
  );
});
