import { describe, expect, it } from 'vitest';
import {
  capacityBuoyant,
  capacityDriven,
  riseWheelhouse,
  shareRadiationKept,
  wheelhouseRange,
} from '../../../engine/disc/wheelhouse.ts';
import type { Changes } from '../../../engine/scenario/override.ts';
import { celsius } from '../../../engine/units.ts';
import { stand } from '../../support/standing.ts';
import { changed, corner, driven, withPhases } from '../../support/stints.ts';

const wheel = { openShare: 0.35, loadedRadius_m: 0.345 };
const day = { density_kgpm3: 1.16, air_K: 299 };

/** The front corner of the heavy car some time after it stopped, in °C. */
function stood({ disc_C, after_s, changes = {} }: { disc_C: number; after_s: number; changes?: Changes }) {
  const hot = { 'initial.front.disc_C': disc_C, 'initial.front.pad_C': 200, 'initial.front.caliper_C': 90 };
  const [front] = stand(changed({ ...hot, ...changes }), after_s, false);
  const last = (column: Float64Array): number => celsius(column.at(-1)!);
  return { wheelhouse_C: last(front!.columns.wheelhouse_K), bulk_C: last(front!.columns.cheek_K) };
}

describe('the air exchanged by a wheelhouse', () => {
  it('grows in proportion to car speed and open area', () => {
    const shut = { ...day, duct_kgps: 0 };
    const once = capacityDriven(wheel, { ...shut, speed_mps: 20 });
    expect(capacityDriven({ ...wheel, openShare: 0.7 }, { ...shut, speed_mps: 40 })).toBeCloseTo(4 * once, 8);
    expect(capacityDriven(wheel, { ...shut, speed_mps: 0 })).toBe(0);
  });

  it('has what the duct brings besides, and nothing less where the mouth draws air out', () => {
    const at = (duct_kgps: number): number => capacityDriven(wheel, { ...day, speed_mps: 20, duct_kgps });
    expect(at(0.1) - at(0)).toBeCloseTo(0.1 * 1007, 0);
    expect(at(-0.1)).toBe(at(0));
  });

  // Two openings of 0.0303 m² a fifth of a metre apart, 80 K warm: 0.65 A √(2 g 0.0996 m 80/379) = 0.0126 m³/s of air of 0.91 kg/m³.
  it('standing, is that of a stack as high as the middles of the halves of the wheel are apart', () => {
    const opening_m2 = (0.35 * Math.PI * 0.2346 ** 2) / 2;
    const flow_m3ps = 0.65 * opening_m2 * Math.sqrt(2 * 9.80665 * 0.42441 * 0.2346 * (80 / 379));
    const capacity = ((1.16 * 299) / 379) * 1006 * flow_m3ps;
    const engine = capacityBuoyant(wheel, { ...day, density_kgpm3: 1.16, air_K: 299 }) * Math.sqrt(80);
    expect(engine / capacity).toBeCloseTo(1, 2);
  });

  it('standing, is within a quarter of a stack with the density of its own warmth from 35 K to the end of its range', () => {
    const nominal_K = day.air_K + 80;
    for (const rise_K of [35, 60, 100, wheelhouseRange.high]) {
      const exact = capacityBuoyant(wheel, day) * (nominal_K / (day.air_K + rise_K)) ** 1.5;
      expect(Math.abs(capacityBuoyant(wheel, day) / exact - 1)).toBeLessThan(0.25);
    }
  });
});

describe('the warmth of a wheelhouse', () => {
  it.each([
    [1200, 3, 0, 1.3],
    [20_000, 40, 2000, 1.3],
    [300, 3, 30, 1.3],
    [-50, 3, 0, 1.3],
    [2500, 6, 5, 0.9],
  ])(
    'carries off the heat that it does not hold back: %d W, %d W/K, %d W/K, %d',
    (heat_W, held, driven, k) => {
      const rise_K = riseWheelhouse(heat_W, held, driven, k);
      const carried_WpK = Math.sqrt(driven ** 2 + k ** 2 * Math.sqrt(rise_K ** 2 + 1));
      expect(rise_K * (carried_WpK + held)).toBeCloseTo(heat_W, 3);
    },
  );

  it('is within 1e-5 K of the root up to 600 K, also where buoyancy alone carries it off', () => {
    for (let rise_K = 0; rise_K <= 600; rise_K += 0.5) {
      const worst = riseWheelhouse(rise_K * 1.3 * (rise_K ** 2 + 1) ** (1 / 4), 0, 0, 1.3);
      expect(Math.abs(worst - rise_K)).toBeLessThan(1e-5);
    }
  });

  it('is none without heat', () => expect(riseWheelhouse(0, 3, 0, 1.3)).toBe(0));

  it('grows with heat without a kink, from below ambient to hot', () => {
    const at = (heat_W: number): number => riseWheelhouse(heat_W, 3, 2, 1.3);
    const heats = Array.from({ length: 400 }, (_, i) => -20 + 5 * i);
    const slopes = heats.map((heat) => (at(heat + 0.01) - at(heat - 0.01)) / 0.02);
    expect(slopes.every((slope) => slope > 0)).toBe(true);
    slopes.slice(1).forEach((slope, i) => expect(Math.abs(slope / slopes[i]! - 1)).toBeLessThan(0.35));
  });

  it('keeps more of the radiation behind a closed wheel', () => {
    expect(shareRadiationKept(0)).toBeGreaterThan(shareRadiationKept(0.5));
    expect(shareRadiationKept(1)).toBeGreaterThan(0);
  });
});

// Common practice, no source: what is felt and measured in a wheelhouse of a car that comes in hot.
describe('a car that stands (common practice, no source)', () => {
  it.each([30, 70, 85])(
    'that came in without a cool lap has 60 to 120 °C in the wheelhouse for three minutes, front blanked by %d of 100',
    (blanking_pct) => {
      const phases = [
        { kind: 'push', laps: 8 },
        { kind: 'stand', duration_s: 180, brake_held: false },
      ] as const;
      const scenario = changed({ 'blanking_pct.front': blanking_pct }, withPhases([...phases], 8));
      const result = driven(scenario);
      const { cheek_K, wheelhouse_K } = corner(result, 'front').columns!;
      const end = result.laps.at(-1)!.lastSample;
      expect(celsius(cheek_K[end]!)).toBeGreaterThan(440);
      expect(celsius(cheek_K[end]!)).toBeLessThan(600);
      for (const air_K of wheelhouse_K.subarray(end + 1)) {
        expect(celsius(air_K)).toBeGreaterThan(60);
        expect(celsius(air_K)).toBeLessThan(120);
      }
    },
  );

  it('is hotter there behind a more closed wheel', () => {
    const closed = stood({ disc_C: 500, after_s: 60, changes: { 'brakes.front.wheel.open_pct': 20 } });
    expect(closed.wheelhouse_C).toBeGreaterThan(stood({ disc_C: 500, after_s: 60 }).wheelhouse_C + 10);
  });

  it('cools its disc more slowly than on a stand in the open', () => {
    const open = stood({ disc_C: 500, after_s: 300, changes: { 'brakes.front.wheel.open_pct': 90 } });
    const closed = stood({ disc_C: 500, after_s: 300, changes: { 'brakes.front.wheel.open_pct': 10 } });
    expect(closed.bulk_C).toBeGreaterThan(open.bulk_C + 2);
  });
});

describe('a car that drives', () => {
  it('has a wheelhouse 5 to 25 K warmer than the day at pace', () => {
    const result = driven(changed({}));
    const push = result.laps.findLast(({ kind }) => kind === 'push')!;
    const lap = corner(result, 'front').columns!.wheelhouse_K.subarray(push.firstSample, push.lastSample + 1);
    expect(Math.min(...lap) - push.ambient_K).toBeGreaterThan(5);
    expect(Math.max(...lap) - push.ambient_K).toBeLessThan(25);
  });

  it('starts from air as cold as the day', () => {
    const { columns } = corner(driven(changed({ 'conditions.ambient_C': 10 })), 'rear');
    expect(celsius(columns!.wheelhouse_K[0]!)).toBeCloseTo(10, 9);
  });

  it('is hottest there where the result says', () => {
    const { columns, wheelhousePeak_K } = corner(driven(changed({})), 'front');
    expect(wheelhousePeak_K).toBe(Math.max(...columns!.wheelhouse_K));
    expect(celsius(wheelhousePeak_K)).toBeGreaterThan(60);
  });
});
