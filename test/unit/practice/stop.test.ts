import { describe, expect, it } from 'vitest';
import { GRAVITY_MPS2, mpsFromKmh } from '../../../engine/units.ts';
import { propertiesAt } from '../../support/bare-slab.ts';
import { peakUnderFallingFlux } from '../../support/exact-slab.ts';
import { corner, onTrace } from '../../support/stints.ts';
import { expectWithin, heavy, light, type TradeCar } from '../../support/trade.ts';

const STEP_S = 0.05;
const DENSITY = 1.18;
const AFTER_S = 12;

interface Asked {
  from_kmh: number;
  to_kmh: number;
  /** To drive on with [W] */
  drive_W: number;
  start_C: number;
}

/** Deceleration of the braked car by the balance of forces [m/s²] */
function braked({ base: { car, driver } }: TradeCar, v: number): number {
  const mass_kg = car.mass_kg + car.fuel_kg;
  const q = 0.5 * DENSITY * v ** 2;
  const grip =
    driver.grip_share_braking_dry * car.grip_dry * (GRAVITY_MPS2 + (q * car.downforce_area_m2) / mass_kg);
  return grip + (q * car.drag_area_m2) / mass_kg + car.rolling_coefficient * GRAVITY_MPS2;
}

/** 5 s at speed, one stop, then back up the straight for 12 s. */
function oneStop(car: TradeCar, { from_kmh, to_kmh, drive_W }: Asked) {
  const mass_kg = car.base.car.mass_kg + car.base.car.fuel_kg;
  const top = mpsFromKmh(from_kmh);
  const speeds = new Array<number>(100).fill(top);
  let v = top;
  while (v > mpsFromKmh(to_kmh))
    speeds.push((v -= Math.min(1, ((speeds.length - 100) * STEP_S) / 0.2) * braked(car, v) * STEP_S));
  const braking_s = (speeds.length - 100) * STEP_S;
  for (let i = 0; i < AFTER_S / STEP_S; i++)
    speeds.push((v = Math.min(top, v + (drive_W / (mass_kg * v) - 5e-4 * v ** 2) * STEP_S)));
  return { speeds, braking_s };
}

/** What the front does in that stop. */
function stopOf(car: TradeCar, asked: Asked) {
  const { speeds, braking_s } = oneStop(car, asked);
  const start = {
    'initial.front.disc_C': asked.start_C,
    'initial.front.pad_C': 350,
    'blanking_pct.front': 50,
  };
  const result = onTrace(speeds, STEP_S, start, car.base);
  const { stops, columns } = corner(result, 'front');
  const stop = stops.find(({ hard }) => hard)!;
  const { face_K, cheek_K, wall_K } = columns!;
  const sampleAt = (t: number): number => result.clock.time_s.findIndex((s) => s >= t - 1e-6);
  const [from, to] = [sampleAt(stop.start_s), sampleAt(stop.end_s)];
  return {
    heat_J: result.brakeEnergyPerLap_J,
    lasts_s: stop.end_s - stop.start_s,
    braking_s,
    faceRise_K: stop.peakFace_K - stop.startFace_K,
    bulkRise_K: Math.max(...cheek_K.slice(from, to + 3)) - cheek_K[from]!,
    apart_K: Math.max(...face_K.slice(from, to + 1).map((T, i) => T - wall_K[from + i]!)),
    firstSecond_K: face_K[to]! - face_K[sampleAt(stop.end_s + 1)]!,
    afterStraight_K: stop.peakFace_K - face_K.at(-1)!,
  };
}

// Practice says 2.3 to 2.8 s for either stop. With the two cars' own grip, driver and build-up the forces need 3.15 s for
// both: the grip, the speeds and the time cannot all hold, and the first two are given.
const HEAVY = stopOf(heavy, { from_kmh: 230, to_kmh: 90, drive_W: 250e3, start_C: 400 });
const LIGHT = stopOf(light, { from_kmh: 195, to_kmh: 95, drive_W: 95e3, start_C: 400 });
const both = [
  { name: 'heavy', car: heavy, stop: HEAVY, heat_J: [1.9e6, 2.1e6], bulk_K: [80, 110] },
  { name: 'light', car: light, stop: LIGHT, heat_J: [0.95e6, 1.15e6], bulk_K: [85, 110] },
] as const;

describe.each(both)(
  'one stop from high speed, $name car (common practice, no source)',
  ({ car, stop, heat_J, bulk_K }) => {
    it('lasts as long as the forces say', () => {
      expect(Math.abs(stop.lasts_s - stop.braking_s)).toBeLessThan(0.25);
    });

    it('makes the heat that practice says', () => expectWithin(stop.heat_J, heat_J));

    it('warms the cheek as a whole', () => expectWithin(stop.bulkRise_K, bulk_K));

    // Practice says 170 to 220 K of the heavy car, which holds, and 125 to 160 K of the light one. For that stop its own heat,
    // area, share and time give 170 K and more (the flux begins at 2.7 MW/m², effusivity 14,500): ours is 180 K.
    it('takes the front face as far above its start as a slab of its heat and thickness', () => {
      const { disc, pad } = car.base.brakes.front;
      const heat_J = (stop.heat_J * car.base.car.brake_balance_front * pad.disc_share!) / 2;
      // a flux that falls in a straight line starts at twice its mean
      const flux = (2 * heat_J) / ((disc.swept_cm2 / 1e4) * stop.lasts_s);
      const thick_m = disc.cheek_mm / 1000;
      const { k, density, c } = propertiesAt('grey iron', 780);
      const Fo = (k * stop.lasts_s) / (density * c * thick_m ** 2);
      const slab_K = ((flux * thick_m) / k) * peakUnderFallingFlux(Fo);
      // the slab has no vanes behind it and no pads of 350 °C on it, which take a tenth of the flux at once
      expectWithin(stop.faceRise_K / slab_K, [0.84, 1]);
    });

    it('lets the face fall in the first second after release', () =>
      expectWithin(stop.firstSecond_K, [40, 80]));
  },
);

describe('one stop of the heavy car (common practice, no source)', () => {
  it('takes the front face well above its start', () => expectWithin(HEAVY.faceRise_K, [170, 220]));
  it('sets face and vane wall far apart', () => expectWithin(HEAVY.apart_K, [180, 250]));
  it('leaves the face far below its peak at the end of the straight', () =>
    expectWithin(HEAVY.afterStraight_K, [130, 200]));
});

describe('one stop of the light car (common practice, no source)', () => {
  // 130 to 200 K below the peak is the heavy car's. Here face and bulk part by less (practice: 125 to 160 K less 85 to
  // 110 K), and what remains of it after 12 s is what the disc cools, 2 to 3.5 K/s.
  it('leaves the face below its peak by what evened out and what the air took', () => {
    const evened_K = LIGHT.faceRise_K - LIGHT.bulkRise_K;
    expectWithin(LIGHT.afterStraight_K, [evened_K + 2 * AFTER_S, evened_K + 3.5 * AFTER_S]);
  });
});

describe.each([heavy, light])(
  'a hot disc at steady speed, $name car (common practice, no source)',
  ({ base }) => {
    it.each([
      ['fast with an open duct', 200, 0, [3, 6]],
      ['fast and three quarters taped', 200, 75, [2, 3.5]],
      ['slow', 70, 0, [1.5, 2.5]],
    ] as const)('cools by some kelvin a second, %s', (_, speed_kmh, blanking, range) => {
      const start = {
        'initial.front.disc_C': 500,
        'initial.front.pad_C': 350,
        'blanking_pct.front': blanking,
      };
      const result = onTrace(new Array<number>(200).fill(mpsFromKmh(speed_kmh)), 0.1, start, base);
      const { cheek_K } = corner(result, 'front').columns!;
      const { time_s } = result.clock;
      const from = time_s.findIndex((t) => t >= 3);
      expectWithin((cheek_K[from]! - cheek_K.at(-1)!) / (time_s.at(-1)! - time_s[from]!), range);
    });
  },
);
