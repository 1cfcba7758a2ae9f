import { describe, expect, it } from 'vitest';
import { cleanTrace } from '../../../engine/circuit/clean-trace.ts';
import { fuseSpeed, lineThrough } from '../../../engine/circuit/quick-channel.ts';

const time_s = Float64Array.from({ length: 601 }, (_, i) => i / 20);

/** 60 m/s, from 10 s on braking at 12 m/s² for 3 s within one row, then speeding up. */
const exact = time_s.map((t) => (t < 10 ? 60 : t < 13 ? 60 - 12 * (t - 10) : 24 + 2 * (t - 13)));
const accel = time_s.map((t) => (t < 10 ? 0 : t < 13 ? -12 : 2));

describe('a speed with a quick channel', () => {
  const fused = (quick_mps2: Float64Array): Float64Array =>
    fuseSpeed({ time_s, speed_mps: exact, at: time_s, quick_mps2, crossover_s: 1.5 });
  const off = (v: Float64Array): number => Math.max(...v.map((value, i) => Math.abs(value - exact[i]!)));

  it('follows a kink that the channel shows, as no smoothing can', () => {
    const { speed_mps } = cleanTrace({ time_s, speed_mps: exact }, { halfWindow_s: 1.5 });
    expect(off(fused(accel))).toBeLessThan(off(speed_mps) / 3);
  });

  it('does not take an offset or a steady drift of the channel for motion', () => {
    const drifting = accel.map((a, i) => a + 0.4 + 0.02 * time_s[i]!);
    const apart = fused(drifting).map((v, i) => v - fused(accel)[i]!);
    expect(Math.max(...apart.map(Math.abs))).toBeLessThan(1e-3);
  });

  it('is the smoothed speed where the channel says nothing', () => {
    const { speed_mps } = cleanTrace({ time_s, speed_mps: exact }, { halfWindow_s: 1.5 });
    const apart = fused(new Float64Array(601)).map((v, i) => v - speed_mps[i]!);
    expect(Math.max(...apart.map(Math.abs))).toBeLessThan(1e-9);
  });
});

describe('an accelerometer that does not belong to the motion', () => {
  const alone = cleanTrace({ time_s, speed_mps: exact });

  it.each([
    ['mounted the other way round', (a: number) => -a],
    ['in a unit ten times too small', (a: number) => a / 10],
    ['that hangs', () => 0.1],
  ])('%s is not used', (_, wrong) => {
    const read = cleanTrace({ time_s, speed_mps: exact, accel_mps2: accel.map(wrong) });
    expect(read.speed_mps).toEqual(alone.speed_mps);
  });

  it('whose scale is 10 percent wrong is put right', () => {
    const [read, right] = [1.1, 1].map((scale) =>
      cleanTrace({ time_s, speed_mps: exact, accel_mps2: accel.map((a) => scale * a) }),
    );
    const apart = read!.speed_mps.map((v, i) => v - right!.speed_mps[i]!);
    expect(Math.max(...apart.map(Math.abs))).toBeLessThan(0.05);
  });
});

it('a line through exact points is found whole, over the points that count', () => {
  const x = Float64Array.of(0, 1, 2, 3, 100);
  const y = Float64Array.of(5, 7, 9, 11, 0);
  const line = lineThrough(x, y, (i) => i < 4);
  expect(line.offset).toBeCloseTo(5, 9);
  expect(line.scale).toBeCloseTo(2, 9);
  expect(line.explained).toBeCloseTo(1, 9);
});
