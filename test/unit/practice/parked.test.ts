import { describe, expect, it } from 'vitest';
import type { Phase, Scenario } from '../../../engine/scenario/schema.ts';
import { celsius } from '../../../engine/units.ts';
import { changed, corner, driven, withPhases } from '../../support/stints.ts';
import { bothCars, expectWithin, heavy, scaled, type TradeCar } from '../../support/trade.ts';

const laps: Phase[] = [
  { kind: 'out', laps: 1 },
  { kind: 'push', laps: null },
];
const parked: Phase = { kind: 'stand', duration_s: 1200, brake_held: false };
const straightIn = (base: Scenario) => driven(withPhases([...laps, parked], 19, base));
const withCoolLap = (base: Scenario) =>
  driven(withPhases([...laps, { kind: 'in', laps: 1 }, parked], 20, base));

/** What the last lap did to the disc's bulk [K] */
function overLastLap(result: ReturnType<typeof driven>): number {
  const { cheek_K } = corner(result, 'front').columns!;
  const { firstSample, lastSample } = result.laps.at(-1)!;
  return cheek_K[lastSample]! - cheek_K[firstSample]!;
}

const ring = ({ base }: TradeCar): number => base.brakes.front.disc.ring_mass_kg;
const caliper = ({ base }: TradeCar): number => base.brakes.front.caliper.mass_kg;

describe.each(bothCars)('after the stint, $name car (common practice, no source)', (car) => {
  const [hot, cooled] = [straightIn(car.base), withCoolLap(car.base)];
  const [hotSoak, cooledSoak] = [corner(hot, 'front').soak!, corner(cooled, 'front').soak!];
  // The figures are of a heavy disc. A lighter one cools faster and has less heat to give a caliper of nearly the same mass.
  const lighter = ring(heavy) / ring(car);
  const lessHeat = (ring(car) / ring(heavy)) * (caliper(heavy) / caliper(car));

  it('parked without a cool lap, the caliper goes on rising for some minutes', () => {
    expectWithin(hotSoak.caliper.rise_K, scaled([20, 60], lessHeat));
    expectWithin(hotSoak.caliper.peakAfter_s / 60, [3, 8]);
  });

  it('the fluid goes on rising with it', () => {
    expectWithin(hotSoak.fluid.rise_K, [5, 50]);
    expectWithin(hotSoak.fluid.peakAfter_s / 60, [2, 10]);
  });

  // about 20 K
  it('the disc cools slowly in the first minute', () =>
    expectWithin(hotSoak.discFirstMinute_K!, scaled([12, 32], lighter)));

  it('the air of the wheelhouse gets hot', () =>
    expectWithin(celsius(corner(hot, 'front').wheelhousePeak_K), [60, 120]));

  it('a cool lap first takes much off the disc', () => expectWithin(overLastLap(cooled), [-170, -120]));

  it('a cool lap first leaves less to soak', () => {
    expectWithin(hotSoak.caliper.rise_K - cooledSoak.caliper.rise_K, [10, 20]);
    expectWithin(hotSoak.fluid.rise_K - cooledSoak.fluid.rise_K, [10, 20]);
  });

  it('a lap that ends in the pits without cooling leaves the disc hotter than it began', () => {
    expect(overLastLap(hot)).toBeGreaterThan(0);
  });
});

describe.each(bothCars)(
  'the margin of the fluid to wet boiling, $name car (common practice, no source)',
  ({ base }) => {
    const peak_C = celsius(corner(driven(base), 'front').fluidPeak_K);

    it.each([
      ['is comfortable', 75, 'comfortable'],
      ['calls for nothing', 50, 'nothing'],
      ['calls to act', 30, 'act'],
      ['says not to run', 10, 'do not run'],
    ])('%s', (_, margin_K, call) => {
      const boils = { 'brakes.front.fluid.wet_boiling_C': Math.round(peak_C + margin_K) };
      const { fluidMargin_K, fluidCall } = corner(driven(changed(boils, base)), 'front');
      expect(Math.abs(fluidMargin_K - margin_K)).toBeLessThan(1);
      expect(fluidCall).toBe(call);
    });

    it('is enough as the car ships', () => {
      expect(['comfortable', 'nothing']).toContain(corner(driven(base), 'front').fluidCall);
    });
  },
);
