import { describe, expect, it } from 'vitest';
import type { Phase, Scenario } from '../../engine/scenario/schema.ts';
import type { PhaseAir, StintResult } from '../../engine/stint/result.ts';
import { bytesOf, shipped } from '../support/shipped.ts';
import { changed, corner, driven, withPhases } from '../support/stints.ts';

/** A run may be this much hotter than another on the mean and still count as equal [K] */
const EQUAL_K = 0.05;
/** And at its peak: that is read by a parabola through samples, and moves so much where the top moves to another sample [K] */
const EQUAL_PEAK_K = 0.1;
const alone = { gap_m: null, gap_s: null, pull_out_kmh: null };
type LapPhase = Exclude<Phase, { kind: 'stand' }>;

/** The same stint with every lap behind a car ahead in one way. */
function behind(scenario: Scenario, traffic: Partial<LapPhase>): Scenario {
  const phases = scenario.stint.phases.map((phase) =>
    phase.kind === 'stand' ? phase : { ...phase, ...alone, ...traffic },
  );
  return withPhases(phases, scenario.stint.laps, scenario);
}

/** The air of one kind of traffic under the speed that a car in line has. */
const inAirOf = (scenario: Scenario, traffic: Partial<LapPhase>, line: Scenario): StintResult =>
  driven(changed({ 'stint.hold_trace': true }, behind(scenario, traffic)), { driven: line });

/** Cuts the air of a phase off where the speeds that are looked at end. */
const airUpTo =
  (top_mps: number) =>
  ({ clear, traffic }: PhaseAir): unknown =>
    [clear, traffic].map((air) => {
      const count = air ? Math.ceil(top_mps / air.speedStep_mps) : 0;
      return Object.values(air ?? {}).map((value) =>
        typeof value === 'number' ? value : [...value.slice(0, count)],
      );
    });

const gaps = [{ gap_m: 4 }, { gap_s: 0.4 }];

describe.each(shipped)('a car that pulls out of the wake on the straights of %s', (_, scenario) => {
  it.each(gaps)('is never hotter than one that stays in line, at one trace: %j', (gap) => {
    const line = behind(scenario, gap);
    const inLine = driven(line);
    for (const pull_out_kmh of [400, 200, 120, 50]) {
      const out = inAirOf(scenario, { ...gap, pull_out_kmh }, line);
      for (const axle of ['front', 'rear'] as const) {
        const [a, b] = [corner(inLine, axle), corner(out, axle)];
        a.laps.forEach(({ faceMax_K, faceMean_K }, i) => {
          expect(b.laps[i]!.faceMax_K - faceMax_K, `${pull_out_kmh} ${axle}`).toBeLessThanOrEqual(
            EQUAL_PEAK_K,
          );
          expect(b.laps[i]!.faceMean_K - faceMean_K, `${pull_out_kmh} ${axle}`).toBeLessThanOrEqual(EQUAL_K);
        });
      }
    }
  });
});

describe('the speed at which it pulls out', () => {
  const [, scenario] = shipped[0]!;
  const peaks = (result: StintResult): number[] => corner(result, 'front').laps.map((lap) => lap.faceMax_K);
  const gap = { gap_m: 4 };
  const line = behind(scenario, gap);

  /** All that a run gives, but its own account of the phases, and the air of speeds that no car here reaches. */
  const reached = (result: StintResult): string[] => [
    bytesOf({ ...result, phases: [], corners: result.corners.map((each) => ({ ...each, phaseAir: [] })) }),
    JSON.stringify(result.corners.map(({ phaseAir }) => phaseAir.map(airUpTo(350 / 3.6)))),
  ];

  it('is none at 400 km/h, to the last bit', () => {
    const never = behind(scenario, { ...gap, pull_out_kmh: null });
    const far = behind(scenario, { ...gap, pull_out_kmh: 400 });
    const [of, against] = [reached(driven(far)), reached(driven(never))];
    expect(of.map((bytes, i) => bytes === against[i])).toEqual([true, true]);
  });

  it('makes clear air of nearly the whole lap at 50 km/h', () => {
    const [wake, beside, clear] = [gap, { ...gap, pull_out_kmh: 50 }, { gap_m: null }].map((traffic) =>
      peaks(inAirOf(scenario, traffic, line)),
    );
    const last = wake!.length - 2;
    expect(wake![last]! - clear![last]!).toBeGreaterThan(15);
    expect(Math.abs(beside![last]! - clear![last]!)).toBeLessThan(1);
  });

  it('moves the face peak without a jump', () => {
    const at = (pull_out_kmh: number): number =>
      peaks(driven(behind(scenario, { ...gap, pull_out_kmh })))[17]!;
    const steps = [100, 105, 110, 115, 120, 125, 130].map(at);
    const whole = Math.abs(at(50) - at(400));
    steps.slice(1).forEach((peak, i) => expect(Math.abs(peak - steps[i]!)).toBeLessThan(whole / 4));
  });
});
