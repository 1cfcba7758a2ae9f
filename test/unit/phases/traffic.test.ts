import { describe, expect, it } from 'vitest';
import type { Phase } from '../../../engine/scenario/schema.ts';
import type { StintResult } from '../../../engine/stint/result.ts';
import { corner, driven, settled, withPhases } from '../../support/stints.ts';

type LapPhase = Exclude<Phase, { kind: 'stand' }>;
const LAPS = 10;
const behind = (traffic: Partial<LapPhase>): StintResult =>
  driven(withPhases([{ kind: 'push', laps: LAPS, ...traffic }], LAPS));

const clear = behind({});
const gap = { gap_m: 8 };
const towed = behind(gap);
const peak = (result: StintResult): number => settled(result, 'front').faceMax_K;

describe('without the tow', () => {
  const untowed = behind({ ...gap, tow: false });

  it('the car is as fast as in clear air, to the bit', () => {
    expect(untowed.clock).toEqual(clear.clock);
    expect(towed.topSpeed_mps).toBeGreaterThan(clear.topSpeed_mps + 1);
  });

  it('its duct starves all the same', () => {
    expect(peak(untowed)).toBeGreaterThan(peak(clear) + 10);
    expect(peak(untowed)).toBeLessThan(peak(towed));
  });
});

describe('a car that pulls out above 150 km/h', () => {
  const out = behind({ ...gap, pull_out_kmh: 150 });

  it('has the tow below that speed only', () => {
    const later = behind({ ...gap, pull_out_kmh: 220 });
    const tops = [clear, out, later, towed].map(({ topSpeed_mps }) => topSpeed_mps);
    expect(tops).toEqual([...tops].sort((a, b) => a - b));
    expect(tops[2]! - tops[0]!).toBeGreaterThan(0.05);
    expect(tops[3]! - tops[2]!).toBeGreaterThan(0.5);
    const times = [towed, later, out, clear].map(({ lapTime_s }) => lapTime_s);
    times.slice(1).forEach((time, i) => expect(time).toBeGreaterThan(times[i]!));
  });

  it('is cooler than in line and hotter than in clear air', () => {
    expect(peak(out)).toBeLessThan(peak(towed) - 5);
    expect(peak(out)).toBeGreaterThan(peak(clear));
  });
});

describe('a share of the lap in traffic', () => {
  it.each([{}, { tow: false }, { pull_out_kmh: 150 }, { pull_out_kmh: 150, tow: false }])(
    'moves the peak all the way from clear air to the whole lap behind: %j',
    (more) => {
      const shares = [0, 0.25, 0.5, 0.75, 1].map((traffic_share) =>
        peak(behind({ ...gap, ...more, traffic_share })),
      );
      expect(shares[0]).toBe(peak(clear));
      expect(shares[4]).toBe(peak(behind({ ...gap, ...more })));
      shares.slice(1).forEach((one, i) => expect(one).toBeGreaterThan(shares[i]!));
      const half = (shares[2]! - shares[0]!) / (shares[4]! - shares[0]!);
      expect(half).toBeGreaterThan(0.4);
      expect(half).toBeLessThan(0.6);
    },
  );
});

describe('a phase of the result', () => {
  it('says how the car follows another', () => {
    const [phase] = behind({ ...gap, pull_out_kmh: 180, tow: false, traffic_share: 0.5 }).phases;
    expect(phase!.gap).toEqual({ gap_m: 8, gap_s: null, share: 0.5, pullOut_mps: 50, tow: false });
    expect(phase!.changed).toEqual(['gap']);
    expect(clear.phases[0]!.gap).toBeNull();
    expect(corner(clear, 'front').laps).toHaveLength(LAPS);
  });
});
