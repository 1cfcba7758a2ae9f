import { describe, expect, it } from 'vitest';
import type { Phase } from '../../../engine/scenario/schema.ts';
import type { StintResult } from '../../../engine/stint/result.ts';
import { celsius } from '../../../engine/units.ts';
import { changed, corner, driven, withPhases } from '../../support/stints.ts';

function expectWithin(value: number, [low, high]: readonly [number, number]): void {
  expect(value).toBeGreaterThanOrEqual(low);
  expect(value).toBeLessThanOrEqual(high);
}

describe.each([2, 3])('%i laps behind a safety car (common practice, no source)', (slow) => {
  const phases: Phase[] = [
    { kind: 'out', laps: 1 },
    { kind: 'push', laps: 9 },
    { kind: 'safety', laps: slow },
    { kind: 'push', laps: null },
    { kind: 'in', laps: 1 },
  ];
  const result = driven(withPhases(phases, 18 + slow, changed({ 'blanking_pct.front': 50 })));
  const { laps, stops, columns } = corner(result, 'front');
  const restart = 10 + slow;

  it('leave the disc at 115 to 230 °C', () => {
    const end = result.laps[restart - 1]!.lastSample;
    expectWithin(celsius(columns!.cheek_K[end]!), [115, 230]);
  });

  it('make the first hard stop after them the coldest of the stint', () => {
    const hard = stops.filter((stop) => stop.hard && stop.lap > 1);
    const coldest = hard.reduce((a, b) => (b.startFace_K < a.startFace_K ? b : a));
    expect(coldest).toBe(hard.find(({ lap }) => lap === restart + 1));
  });

  it('are made up for in three laps: the peak is back within 40 K on the third and not on the second', () => {
    const short = [0, 1, 2].map((i) => laps[9]!.faceMax_K - laps[restart + i]!.faceMax_K);
    expect(short[1]).toBeGreaterThan(40);
    expect(short[2]).toBeLessThan(40);
  });
});

/** From the stop on: how much each column rises, after how long, and how fast the disc cools. */
function soak(result: StintResult) {
  const columns = corner(result, 'front').columns!;
  const { time_s } = result.clock;
  const { firstSample, lastSample: stop } = result.laps.at(-1)!;
  const rise = (column: Float64Array) => {
    let top = stop;
    for (let i = stop; i < column.length; i++) if (column[i]! > column[top]!) top = i;
    return { by_K: column[top]! - column[stop]!, after_min: (time_s[top]! - time_s[stop]!) / 60 };
  };
  const minute = time_s.findIndex((t) => t >= time_s[stop]! + 60);
  return {
    caliper: rise(columns.caliper_K),
    fluid: rise(columns.fluid_K),
    overLastLap_K: columns.cheek_K[stop]! - columns.cheek_K[firstSample]!,
    firstMinute_K: columns.cheek_K[stop]! - columns.cheek_K[minute]!,
  };
}

describe('after the stint (common practice, no source)', () => {
  const laps: Phase[] = [
    { kind: 'out', laps: 1 },
    { kind: 'push', laps: null },
  ];
  const parked: Phase = { kind: 'stand', duration_s: 1200, brake_held: false };
  const hot = soak(driven(withPhases([...laps, parked], 19)));
  const cooled = soak(driven(withPhases([...laps, { kind: 'in', laps: 1 }, parked], 20)));

  it('parked without a cool lap, the caliper rises 20 to 60 K in 3 to 8 minutes', () => {
    expectWithin(hot.caliper.by_K, [20, 60]);
    expectWithin(hot.caliper.after_min, [3, 8]);
  });

  it('the fluid goes on rising 5 to 50 K, for 2 to 10 minutes', () => {
    expectWithin(hot.fluid.by_K, [5, 50]);
    expectWithin(hot.fluid.after_min, [2, 10]);
  });

  it('the disc loses about 20 K in the first minute', () => expectWithin(hot.firstMinute_K, [12, 32]));

  it('a cool lap first takes 120 to 170 K off the disc', () => {
    expectWithin(cooled.overLastLap_K, [-170, -120]);
  });

  it('a cool lap first leaves 10 to 20 K less to soak', () => {
    expectWithin(hot.caliper.by_K - cooled.caliper.by_K, [10, 20]);
    expectWithin(hot.fluid.by_K - cooled.fluid.by_K, [10, 20]);
  });

  it('a lap that ends in the pits without cooling leaves the disc hotter than it began', () => {
    expect(hot.overLastLap_K).toBeGreaterThan(0);
  });
});
