/** Runs a compiled stint: every corner through every lap, then the books, the judgement and the notices. */
import type { CornerColumns } from '../disc/columns.ts';
import { driveLap } from '../disc/kernel.ts';
import { createStepper, nodeTemperatures, storedHeat, BOOK, type Stepper } from '../disc/stepper.ts';
import { outlineOf } from '../circuit/outline.ts';
import { damageOf, faceOverCore } from './damage.ts';
import { fluidMargins } from './fluid-margin.ts';
import { judge, windowOf } from './judge.ts';
import { lapsOf, phasesOf } from './timeline.ts';
import { summariseLaps, type Watched } from './lap-summary.ts';
import type { CornerModel, StintModel } from './compile.ts';
import { airRows } from './air-rows.ts';
import { ductCost } from './duct-cost.ts';
import { ductPressures } from './duct-pressures.ts';
import { circuitLayout, lapLength } from './motion.ts';
import { noticesOf } from './notices.ts';
import { highest } from './measures.ts';
import { frictionOf, pedalOf, type Friction } from './pedal.ts';
import { pullsOf } from './pulls.ts';
import { rangesOf } from './ranges.ts';
import { restartsOf } from './restarts.ts';
import type { LapPassage } from './passages.ts';
import type { Clock, CornerResult, Ledger, StintResult, Track } from './result.ts';
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

/** A corner driven through the whole stint and judged; what a search reads. */
export interface JudgedCorner extends Pick<
  CornerResult,
  'axle' | 'side' | 'window' | 'laps' | 'stops' | 'verdict'
> {
  friction: Friction;
  ledger_J: Ledger;
}

/** Drives a corner into columns that have room for all samples. */
export function judgedCorner(
  model: StintModel,
  corner: CornerModel,
  clock: Clock,
  trace: CornerColumns,
): JudgedCorner {
  const { axle, side, brake } = corner.corner;
  const stepper = createStepper(corner.spec, corner.start);
  const start_J = storedHeat(stepper, nodeTemperatures(stepper));
  let sample = 0;
  for (const passage of model.passages) {
    const share = corner.shares[passage.leg]! * (passage.kind === 'stand' ? 1 : passage.massRatio);
    const steps = passage.kind === 'stand' ? passage.plan : passage.plan.axles[axle];
    driveLap(stepper, steps, share, corner.maps[passage.leg]!, trace, sample);
    sample += passage.plan.steps;
  }
  const window = windowOf(brake);
  const friction = frictionOf(brake, window);
  const overCore_K = faceOverCore(trace, model.samples);
  const watched: Watched = { model, trace, overCore_K, clock, window, friction, axle };
  const { laps, stops } = summariseLaps(watched, brake);
  const verdict = judge(laps, window, brake.window.from_lap);
  return { axle, side, window, laps, stops, verdict, friction, ledger_J: ledgerOf(stepper, start_J) };
}

/** One corner through the whole stint, with all that is told of it. */
function runCorner(
  model: StintModel,
  corner: CornerModel,
  clock: Clock,
  wanted: 'columns' | 'summary',
): CornerResult {
  const { brake } = corner.corner;
  const trace = newColumns(model.samples);
  const { friction, ...judged } = judgedCorner(model, corner, clock, trace);
  const { laps, stops, window } = judged;
  const fluidPeak_K = highest(trace.fluid_K);
  return {
    ...judged,
    columns: wanted === 'columns' ? trace : null,
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
    ductCost: ductCost(corner.corner, model.scenario),
    pressures: ductPressures(corner.corner, model.scenario),
  };
}

/** The books of a corner. "Stored" is recomputed from temperatures, so that the residual is honest. */
function ledgerOf(stepper: Stepper, start_J: number): Ledger {
  const booked = stepper.booked_J;
  const stored = storedHeat(stepper, nodeTemperatures(stepper)) - start_J;
  const [faceAir, vaneAir, otherAir, radiation, conducted, brakeHeat] = booked as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const residual = booked[BOOK.brakeHeat]! - stored - faceAir - vaneAir - otherAir - radiation - conducted;
  return { brakeHeat, stored, vaneAir, faceAir, otherAir, radiation, conducted, residual };
}

/** Columns of zeros, one entry a sample. */
export function newColumns(samples: number): CornerColumns {
  const column = (): Float64Array => new Float64Array(samples);
  return {
    face_K: column(),
    cheek_K: column(),
    wall_K: column(),
    rim_K: column(),
    bell_K: column(),
    pad_K: column(),
    caliper_K: column(),
    fluid_K: column(),
    wheelhouse_K: column(),
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
