/** Runs a compiled stint: every corner through every lap, then the books, the judgement and the notices. */
import { outlineOf } from '../circuit/outline.ts';
import { copyOf } from '../disc/columns.ts';
import { damageOf } from './damage.ts';
import { rememberedCorner } from './driven.ts';
import { fluidMargins } from './fluid-margin.ts';
import { lapsOf, phasesOf } from './timeline.ts';
import type { CornerModel, StintModel } from './compile.ts';
import { airRows } from './air-rows.ts';
import { ductCost } from './duct-cost.ts';
import { ductPressures } from './duct-pressures.ts';
import { circuitLayout, lapLength } from './motion.ts';
import { noticesOf } from './notices.ts';
import { highest } from './measures.ts';
import { pedalOf } from './pedal.ts';
import { phaseAirs } from './phase-air.ts';
import { pullsOf } from './pulls.ts';
import { rangesOf } from './ranges.ts';
import { restartsOf } from './restarts.ts';
import type { LapPassage } from './passages.ts';
import type { Clock, CornerResult, StintResult, Track } from './result.ts';
import { soaksOf } from './soak.ts';

/** `wanted: 'summary'` leaves the columns out of the result. */
export function run(model: StintModel, wanted: 'columns' | 'summary' = 'columns'): StintResult {
  const clock = clockOf(model);
  const laps = lapsOf(model);
  const corners = model.corners.map((corner) => runCorner(model, corner, clock, wanted));
  const example = exampleLap(model);
  const pulls = pullsOf(corners);
  return {
    name: model.scenario.name,
    laps,
    phases: phasesOf(model),
    clock,
    corners,
    pulls,
    track: trackOf(model),
    lapTime_s: example?.plan.duration_s ?? 0,
    topSpeed_mps: example?.plan.topSpeed_mps ?? 0,
    brakeEnergyPerLap_J: example ? example.plan.heat_J * example.massRatio : 0,
    notices: noticesOf(model, corners, pulls),
  };
}

/** The lap that stands for the stint: the first push lap at full speed from line to line, or the first of what there is. */
function exampleLap({ passages }: StintModel): LapPassage | undefined {
  const laps = passages.filter((p): p is LapPassage => p.kind !== 'stand');
  const push = laps.filter(({ kind }) => kind === 'push');
  return push.find(({ flying }) => flying) ?? push[0] ?? laps[0];
}

/** One corner through the whole stint, with all that is told of it. */
function runCorner(
  model: StintModel,
  corner: CornerModel,
  clock: Clock,
  wanted: 'columns' | 'summary',
): CornerResult {
  const { brake } = corner.corner;
  const { friction, columns: trace, ...judged } = rememberedCorner({ model, corner, clock });
  const { laps, stops, window } = judged;
  const fluidPeak_K = highest(trace.fluid_K);
  return {
    ...judged,
    // the memory keeps its own: a worker gives away what it is handed
    columns: wanted === 'columns' ? copyOf(trace) : null,
    restarts: restartsOf(model.passages, stops, window),
    ...soaksOf(model.passages, trace, clock.time_s, brake),
    facePeak_K: Math.max(...laps.map((lap) => lap.faceMax_K), trace.face_K[0]!),
    bulkPeak_K: highest(trace.cheek_K),
    vanePeak_K: highest(trace.wall_K),
    padPeak_K: highest(trace.pad_K),
    caliperPeak_K: highest(trace.caliper_K),
    fluidPeak_K,
    wheelhousePeak_K: highest(trace.wheelhouse_K),
    fluidPeakAt_s: clock.time_s[trace.fluid_K.indexOf(fluidPeak_K)] ?? 0,
    ...fluidMargins(brake, fluidPeak_K),
    damage: damageOf(laps, stops),
    pedal: pedalOf(laps, stops, friction),
    ranges: wanted === 'columns' ? rangesOf(model, corner, trace) : [],
    air: airRows(corner.corner, model.scenario),
    phaseAir: wanted === 'columns' ? phaseAirs(corner.corner, model.scenario) : [],
    ductCost: ductCost(corner.corner, model.scenario),
    pressures: ductPressures(corner.corner, model.scenario),
  };
}

/** The columns that all corners of a model share. */
export function clockOf(model: StintModel): Clock {
  const column = (): Float64Array => new Float64Array(model.samples);
  const clock: Clock = {
    time_s: column(),
    distance_m: column(),
    speed_mps: column(),
    brakePower_W: column(),
  };
  const [first] = model.passages;
  clock.speed_mps[0] = first && first.kind !== 'stand' ? first.plan.startSpeed_mps : 0;
  let at = 1;
  let start_s = 0;
  for (const passage of model.passages) {
    const { plan } = passage;
    for (let n = 0; n < plan.steps; n++, at++) {
      clock.time_s[at] = start_s + plan.end_s[n]!;
      if (passage.kind === 'stand') continue;
      clock.distance_m[at] = passage.plan.end_m[n]!;
      clock.speed_mps[at] = passage.plan.endSpeed_mps[n]!;
      clock.brakePower_W[at] = passage.massRatio * plan.power_W[n]!;
    }
    start_s += plan.end_s.at(-1) ?? 0;
  }
  return clock;
}

function trackOf({ scenario }: StintModel): Track {
  if (scenario.trace) return { length_m: lapLength(scenario), outline: null, corners: [] };
  const layout = circuitLayout(scenario);
  const corners = layout.corners.map(({ name, at_m }) => ({ name, at_m }));
  const { x_m, y_m } = outlineOf(layout);
  return { length_m: layout.length_m, outline: { distance_m: layout.distance_m.slice(), x_m, y_m }, corners };
}
