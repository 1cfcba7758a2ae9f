import { describe, expect, it } from 'vitest';
import { GRAVITY_MPS2, mpsFromKmh } from '../../../engine/units.ts';
import { corner, onTrace } from '../../support/stints.ts';

const STEP_S = 0.05;
const car = {
  mass_kg: 1375,
  grip: 1.38,
  share: 0.74,
  drag_m2: 1.05,
  downforce_m2: 2.2,
  rolling: 0.015,
  density: 1.18,
};

/** Deceleration of the braked car by the balance of forces [m/s²] */
function braked(v: number): number {
  const q = 0.5 * car.density * v ** 2;
  const grip = car.share * car.grip * (GRAVITY_MPS2 + (q * car.downforce_m2) / car.mass_kg);
  return grip + (q * car.drag_m2) / car.mass_kg + car.rolling * GRAVITY_MPS2;
}

/** 5 s at 230 km/h, one stop to 90 km/h, then back up the straight for 12 s. */
function oneStop(): { speeds: number[]; braking_s: number } {
  const top = mpsFromKmh(230);
  const speeds = new Array<number>(100).fill(top);
  let v = top;
  while (v > mpsFromKmh(90))
    speeds.push((v -= Math.min(1, ((speeds.length - 100) * STEP_S) / 0.2) * braked(v) * STEP_S));
  const braking_s = (speeds.length - 100) * STEP_S;
  for (let i = 0; i < 240; i++)
    speeds.push((v = Math.min(top, v + (250_000 / (car.mass_kg * v) - 5e-4 * v ** 2) * STEP_S)));
  return { speeds, braking_s };
}

function expectWithin(value: number, [low, high]: readonly [number, number]): void {
  expect(value).toBeGreaterThanOrEqual(low);
  expect(value).toBeLessThanOrEqual(high);
}

describe('one stop of the heavy car from 230 to 90 km/h (common practice, no source)', () => {
  const { speeds, braking_s } = oneStop();
  const result = onTrace(speeds, STEP_S, {
    'initial.front.disc_C': 400,
    'initial.front.pad_C': 350,
    'blanking_pct.front': 50,
  });
  const { stops, columns } = corner(result, 'front');
  const stop = stops.find(({ hard }) => hard)!;
  const sampleAt = (t: number): number => result.clock.time_s.findIndex((s) => s >= t - 1e-6);
  const [from, to] = [sampleAt(stop.start_s), sampleAt(stop.end_s)];
  const { face_K, cheek_K, wall_K } = columns!;

  it('lasts as long as the forces say', () => {
    expect(Math.abs(stop.end_s - stop.start_s - braking_s)).toBeLessThan(0.25);
  });

  it('makes 1.9 to 2.1 MJ', () => expectWithin(result.brakeEnergyPerLap_J, [1.9e6, 2.1e6]));

  it('takes the front face 170 to 220 K above its start', () => {
    expectWithin(stop.peakFace_K - stop.startFace_K, [170, 220]);
  });

  it('warms the cheek as a whole by 80 to 110 K', () => {
    expectWithin(Math.max(...cheek_K.slice(from, to + 3)) - cheek_K[from]!, [80, 110]);
  });

  it('sets face and vane wall 180 to 250 K apart', () => {
    const apart = face_K.slice(from, to + 1).map((T, i) => T - wall_K[from + i]!);
    expectWithin(Math.max(...apart), [180, 250]);
  });

  it('lets the face fall 40 to 80 K in the first second after release', () => {
    expectWithin(face_K[to]! - face_K[sampleAt(stop.end_s + 1)]!, [40, 80]);
  });

  it('leaves the face 130 to 200 K below its peak after 12 s', () => {
    expectWithin(stop.peakFace_K - face_K.at(-1)!, [130, 200]);
  });
});

describe('a disc at 500 °C at steady speed (common practice, no source)', () => {
  it.each([
    ['200 km/h, open', 200, 0, [3, 6]],
    ['200 km/h, three quarters taped', 200, 75, [2, 3.5]],
    ['70 km/h', 70, 0, [1.5, 2.5]],
  ] as const)('cools at %s', (_, speed_kmh, blanking, range) => {
    const result = onTrace(new Array<number>(200).fill(mpsFromKmh(speed_kmh)), 0.1, {
      'initial.front.disc_C': 500,
      'initial.front.pad_C': 350,
      'blanking_pct.front': blanking,
    });
    const { cheek_K } = corner(result, 'front').columns!;
    const { time_s } = result.clock;
    const from = time_s.findIndex((t) => t >= 3);
    expectWithin((cheek_K[from]! - cheek_K.at(-1)!) / (time_s.at(-1)! - time_s[from]!), range);
  });
});
