import { describe, expect, it } from 'vitest';
import type { TraceColumns } from '../../engine/circuit/trace.ts';
import { brakeHeat } from '../../engine/car/brake-heat.ts';
import { cleanTrace } from '../../engine/circuit/clean-trace.ts';
import { defaultScenario, withCircuit } from '../../engine/scenario/library.ts';
import { checkScenario } from '../../engine/scenario/parse.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import { clearAir } from '../../engine/stint/legs.ts';
import { motionOf } from '../../engine/stint/motion.ts';
import { compile } from '../../engine/stint/compile.ts';
import { heavyCar, warmDay } from '../support/driving.ts';
import { endError, loggedChannels, stopEnds, traceOf, type Logger } from '../support/logger.ts';
import { driven, settled, withPhases } from '../support/stints.ts';

const LAPS = 6;
const circuits = ['sorrelby', 'long', 'slow'];
const seeds = [1, 2, 3, 4];
const axles = ['front', 'rear'] as const;

/** A driven lap of a circuit, its brakes, and the stint it makes. */
function lapOn(id: string) {
  const scenario = withPhases([{ kind: 'push', laps: LAPS }], LAPS, withCircuit(defaultScenario(), id));
  const passage = compile(scenario).passages[0]!;
  if (passage.kind === 'stand') throw new Error('no lap');
  const { mass_kg } = passage.plan;
  const { profile, heat } = motionOf({ kind: 'push', scenario, gap: clearAir, mass_kg, ends: {} });
  return { id, scenario, profile, heat, clean: driven(scenario) };
}

const withTrace = (scenario: Scenario, columns: TraceColumns & { time_s: Float64Array }): Scenario => {
  const checked = checkScenario({ ...scenario, trace: traceOf(columns) });
  if (!checked.ok) throw new Error('refused');
  return checked.scenario;
};

const rms = (values: number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

/** How far heat [%], face peaks [K] and the ends of stops [s] are off, over all circuits and seeds. */
function errors(channels: (lap: ReturnType<typeof lapOn>) => Partial<Logger>) {
  const runs = laps.flatMap((lap) =>
    seeds.map((seed) => {
      const logger = { rate_Hz: 10, speedNoise_mps: 0.1, seed, ...channels(lap) };
      const columns = { ...loggedChannels(lap.profile, logger), slope: slopeAt(lap.profile, 10) };
      const result = driven(withTrace(lap.scenario, columns));
      const peaks = axles.map((axle) => settled(result, axle).faceMax_K - settled(lap.clean, axle).faceMax_K);
      const read = cleanTrace(columns);
      const ends = stopEnds(read, brakeHeat(read, heavyCar, warmDay));
      return {
        heat_pct: 100 * (result.brakeEnergyPerLap_J / lap.clean.brakeEnergyPerLap_J - 1),
        peaks,
        on_s: endError(ends, stopEnds(lap.profile, lap.heat), 'on_s'),
        off_s: endError(ends, stopEnds(lap.profile, lap.heat), 'off_s'),
      };
    }),
  );
  const mean = (of: (run: (typeof runs)[number]) => number): number =>
    runs.reduce((sum, run) => sum + of(run), 0) / runs.length;
  return {
    heat_pct: rms(runs.map(({ heat_pct }) => heat_pct)),
    worstHeat_pct: Math.max(...runs.map(({ heat_pct }) => Math.abs(heat_pct))),
    peak_K: rms(runs.flatMap(({ peaks }) => peaks)),
    worstPeak_K: Math.max(...runs.flatMap(({ peaks }) => peaks.map(Math.abs))),
    on_s: mean(({ on_s }) => on_s),
    off_s: mean(({ off_s }) => off_s),
  };
}

function slopeAt({ time_s, slope }: { time_s: Float64Array; slope: Float64Array }, rate_Hz: number) {
  let i = 0;
  return Float64Array.from({ length: Math.floor(time_s.at(-1)! * rate_Hz) + 1 }, (_, n) => {
    while (i < time_s.length - 2 && time_s[i + 1]! <= n / rate_Hz) i++;
    return slope[i]!;
  });
}

const laps = circuits.map(lapOn);

describe('laps of three circuits logged at 10 Hz, 0.1 m/s of noise on the speed', () => {
  const accel = { offset_g: 0.02, noise_g: 0.05 };
  const speed = errors(() => ({}));
  const felt = errors(() => ({ accel }));
  const pressed = errors(({ heat }) => ({ brakes: { heat, noise_bar: 0.3, rest_bar: 0.4 } }));
  const log = (name: string, { heat_pct, peak_K, on_s, off_s }: typeof speed): void =>
    console.log(
      `${name}: heat ${heat_pct.toFixed(2)} %, face peak ${peak_K.toFixed(1)} K (rms), ` +
        `on ${(1000 * on_s).toFixed(0)} ms, off ${(1000 * off_s).toFixed(0)} ms`,
    );
  log('speed alone', speed);
  log('with an accelerometer', felt);
  log('with brake pressure', pressed);

  it.each([
    ['an accelerometer', felt],
    ['brake pressure', pressed],
  ])('give no worse heat and face peaks with %s than by speed alone', (_, more) => {
    expect(more.heat_pct).toBeLessThanOrEqual(speed.heat_pct);
    expect(more.worstHeat_pct).toBeLessThan(1);
    expect(more.peak_K).toBeLessThanOrEqual(speed.peak_K);
    expect(more.worstPeak_K).toBeLessThan(5);
  });

  it.each([
    ['an accelerometer', felt],
    ['brake pressure', pressed],
  ])('show the start of stops at least twice as well with %s', (_, more) => {
    expect(more.on_s).toBeLessThan(speed.on_s / 2);
  });
});
