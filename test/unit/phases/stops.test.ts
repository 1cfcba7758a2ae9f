import { describe, expect, it } from 'vitest';
import { shippedStint } from '../../../engine/scenario/library.ts';
import type { Phase, Scenario } from '../../../engine/scenario/schema.ts';
import type { StintResult } from '../../../engine/stint/result.ts';
import { compile } from '../../../engine/stint/compile.ts';
import { kmhFromMps } from '../../../engine/units.ts';
import { driven, onTrace, withPhases } from '../../support/stints.ts';

const stand: Phase = { kind: 'stand', duration_s: 40, brake_held: false };
const push = (laps: number): Phase => ({ kind: 'push', laps });

/** Speed where each lap begins and ends [km/h] */
function endsOf(scenario: Scenario): [from: number, to: number][] {
  return compile(scenario).passages.flatMap((passage): [number, number][] =>
    passage.kind === 'stand'
      ? []
      : [[kmhFromMps(passage.plan.startSpeed_mps), kmhFromMps(passage.plan.endSpeed_mps.at(-1)!)]],
  );
}

describe('a stand between push laps', () => {
  const scenario = withPhases([push(2), stand, push(2)], 4);
  const result = driven(scenario);

  it('is reached and left at the pit lane’s speed', () => {
    const [first, before, after, last] = endsOf(scenario);
    expect(before![1]).toBeCloseTo(60, 6);
    expect(after![0]).toBeCloseTo(60, 6);
    expect(before![0]).toBeCloseTo(first![1], 1);
    expect(last![0]).toBeCloseTo(after![1], 1);
  });

  it('leaves the other laps as they were', () => {
    const whole = driven(withPhases([push(4)], 4));
    const time = (of: StintResult, lap: number): number => of.laps[lap]!.end_s - of.laps[lap]!.start_s;
    expect(time(result, 3)).toBeCloseTo(time(whole, 3), 1);
    expect(time(result, 1)).toBeGreaterThan(time(whole, 1) + 8);
    expect(time(result, 2)).toBeGreaterThan(time(whole, 2) + 1);
    expect(result.lapTime_s).toBeCloseTo(whole.lapTime_s, 1);
  });

  it('has 300 m of pit lane before it', () => {
    const { clock, laps, track } = result;
    const { firstSample, lastSample } = laps[1]!;
    for (let i = firstSample + 1; i <= lastSample; i++) {
      const isInLane = clock.distance_m[i]! > track.length_m - 299;
      if (isInLane) expect(kmhFromMps(clock.speed_mps[i]!)).toBeLessThan(60.01);
    }
  });
});

describe('speed goes on from lap to lap', () => {
  it.each(['restart', 'sorrelby-20', 'hour', 'night-rain', 'club-evening'])('in %s', (id) => {
    const laps = endsOf(shippedStint(id));
    laps.slice(1).forEach(([from], i) => expect(from, `lap ${i + 2}`).toBeCloseTo(laps[i]![1], 1));
  });

  it('from behind the safety car into the first push lap, which takes longer than the next', () => {
    const scenario = shippedStint('restart');
    const { laps } = driven(scenario);
    const first = laps.findIndex((lap, i) => lap.kind === 'push' && laps[i - 1]?.kind === 'safety');
    expect(endsOf(scenario)[first]![0]).toBeLessThan(150.01);
    const time = (i: number): number => laps[i]!.end_s - laps[i]!.start_s;
    expect(time(first)).toBeGreaterThan(time(first + 1) + 0.5);
  });

  it('and no faster than the brakes and tyres allow where a slow lap begins', () => {
    const { clock } = driven(withPhases([push(2), { kind: 'safety', laps: 2 }], 4));
    for (let i = 1; i < clock.time_s.length; i++) {
      const change =
        (clock.speed_mps[i]! - clock.speed_mps[i - 1]!) / (clock.time_s[i]! - clock.time_s[i - 1]!);
      expect(change, `at ${clock.time_s[i]} s`).toBeGreaterThan(-25);
    }
  });
});

describe('several out-laps or in-laps', () => {
  it('leave the pits once and come in once', () => {
    const ends = endsOf(withPhases([{ kind: 'out', laps: 2 }, push(2), { kind: 'in', laps: 2 }, stand], 6));
    expect(ends[0]![0]).toBeCloseTo(60, 6);
    expect(ends[1]![0]).toBeGreaterThan(150);
    expect(ends[4]![1]).toBeGreaterThan(90);
    expect(ends[5]![1]).toBeCloseTo(60, 6);
  });
});

describe('a measured lap', () => {
  it('is left as it was measured, stand or no stand', () => {
    const speeds = Array.from({ length: 400 }, (_, i) => 45 + 15 * Math.sin(i / 15));
    const [first] = onTrace(speeds, 0.2).laps;
    expect(first!.end_s).toBeCloseTo(399 * 0.2, 0);
  });
});
