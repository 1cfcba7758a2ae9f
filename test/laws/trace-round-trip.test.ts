import { describe, expect, it } from 'vitest';
import { readTrace } from '../../engine/trace-file/read-trace.ts';
import type { SpeedProfile } from '../../engine/circuit/speed-profile.ts';
import { checkScenario } from '../../engine/scenario/parse.ts';
import { tracePart } from '../../engine/scenario/trace-part.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import { compile } from '../../engine/stint/compile.ts';
import { clearAir } from '../../engine/stint/legs.ts';
import { motionOf } from '../../engine/stint/motion.ts';
import { kmhFromMps } from '../../engine/units.ts';
import { driven, settled, withPhases } from '../support/stints.ts';

const LAPS = 8;
const SAMPLES_PER_S = 10;
const NOISE_MPS = 0.1;

/** Even random numbers from 0 to 1, the same every time. Source: Park & Miller, Comm. ACM 31 (1988) 1192. */
function evenNumbers(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 48271) % 2147483647) / 2147483647;
}

const gaussian = (even: () => number): number =>
  Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even());

/** A lap as a logger would write it, with a speed that is not quite right. */
function logOf({ time_s, speed_mps, slope }: SpeedProfile, seed: number): string {
  const even = evenNumbers(seed);
  const lines = ['Time,Speed,Slope', 's,km/h,%'];
  let i = 0;
  for (let n = 0; n / SAMPLES_PER_S <= time_s.at(-1)!; n++) {
    const t = n / SAMPLES_PER_S;
    while (i < time_s.length - 2 && time_s[i + 1]! < t) i++;
    const w = (t - time_s[i]!) / (time_s[i + 1]! - time_s[i]!);
    const v = speed_mps[i]! + w * (speed_mps[i + 1]! - speed_mps[i]!) + NOISE_MPS * gaussian(even);
    lines.push(`${t.toFixed(1)},${kmhFromMps(v).toFixed(2)},${(100 * slope[i]!).toFixed(2)}`);
  }
  return lines.join('\n');
}

function withLog(scenario: Scenario, text: string): Scenario {
  const { columns, problems } = readTrace(text);
  if (!columns) throw new Error(problems.join('\n'));
  const checked = checkScenario({ ...scenario, trace: tracePart('noisy lap', columns) });
  if (!checked.ok) throw new Error('refused');
  return checked.scenario;
}

describe('a driven lap logged at 10 Hz with 0.1 m/s of noise and read back', () => {
  const scenario = withPhases([{ kind: 'push', laps: LAPS }], LAPS);
  const passage = compile(scenario).passages[0]!;
  if (passage.kind === 'stand') throw new Error('no lap');
  const { profile } = motionOf({
    kind: 'push',
    scenario,
    gap: clearAir,
    mass_kg: passage.plan.mass_kg,
    ends: {},
  });
  const clean = driven(scenario);

  it.each([1, 2, 3])('gives brake heat within 2 percent and face peaks within 5 K, seed %i', (seed) => {
    const noisy = driven(withLog(scenario, logOf(profile, 1000 * seed + 7)));
    const heat = noisy.brakeEnergyPerLap_J / clean.brakeEnergyPerLap_J - 1;
    const off = (['front', 'rear'] as const).map(
      (axle) => settled(noisy, axle).faceMax_K - settled(clean, axle).faceMax_K,
    );
    console.log(
      `heat ${(100 * heat).toFixed(2)} %, face peaks ${off.map((K) => K.toFixed(1)).join(' and ')} K`,
    );
    expect(Math.abs(heat)).toBeLessThan(0.02);
    for (const K of off) expect(Math.abs(K)).toBeLessThan(5);
  });
});
