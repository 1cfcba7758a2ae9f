/** Short ways to run the shipped cars for tests. */
import { defaultScenario } from '../../engine/scenario/library.ts';
import { override, type Changes } from '../../engine/scenario/override.ts';
import { checkScenario } from '../../engine/scenario/parse.ts';
import { problemLine } from '../../engine/scenario/problem.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import { compile, type CompileOptions } from '../../engine/stint/compile.ts';
import type { CornerResult, LapSummary, StintResult } from '../../engine/stint/result.ts';
import { run } from '../../engine/stint/run.ts';

/** The default scenario with changes; throws with the problems where they are refused. */
export function changed(changes: Changes, base: Scenario = defaultScenario()): Scenario {
  const result = override(base, changes);
  if (!result.ok) throw new Error(result.problems.map(problemLine).join('\n'));
  return result.scenario;
}

/** Phases are a list, which no single key changes. */
export function withPhases(
  phases: Scenario['stint']['phases'],
  laps: number,
  base: Scenario = defaultScenario(),
): Scenario {
  const checked = checkScenario({ ...base, stint: { ...base.stint, phases, laps } });
  if (!checked.ok) throw new Error(checked.problems.map(problemLine).join('\n'));
  return checked.scenario;
}

export const driven = (scenario: Scenario, options: CompileOptions = {}): StintResult =>
  run(compile(scenario, options));

/** The default scenario with air and blanking changed under the speed and heat it had before. */
export const held = (changes: Changes, base: Scenario = defaultScenario()): StintResult =>
  driven(changed({ 'stint.hold_trace': true, ...changes }, base), { driven: base });

export function corner(result: StintResult, axle: 'front' | 'rear'): CornerResult {
  const found = result.corners.find((one) => one.axle === axle);
  if (!found) throw new Error(`no corner: ${axle}`);
  return found;
}

/** The last push lap: what a long run settles to. */
export function settled(result: StintResult, axle: 'front' | 'rear'): LapSummary {
  const lap = corner(result, axle).laps.findLast((one) => one.kind === 'push');
  if (!lap) throw new Error('no push lap');
  return lap;
}

/** A measured lap made of speeds at even times [m/s, s], on which a car is run once: the heavy one. */
export function onTrace(
  speeds_mps: number[],
  step_s: number,
  changes: Changes = {},
  car: Scenario = defaultScenario(),
): StintResult {
  let distance = 0;
  const trace = {
    name: 'made for a test',
    time_s: speeds_mps.map((_, i) => i * step_s),
    distance_m: speeds_mps.map(
      (v, i) => (distance += i === 0 ? 0 : ((v + (speeds_mps[i - 1] ?? v)) / 2) * step_s),
    ),
    speed_kmh: speeds_mps.map((v) => v * 3.6),
  };
  const base = { ...car, trace };
  return driven(changed(changes, withPhases([{ kind: 'push', laps: 1 }], 1, base)));
}
