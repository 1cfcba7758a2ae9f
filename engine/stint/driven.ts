/** Drives a corner through the whole stint and judges it; remembers the last few, for a hand changes one axle at a time. */
import { newColumns, type CornerColumns } from '../disc/columns.ts';
import { driveLap } from '../disc/kernel.ts';
import { createStepper, nodeTemperatures, storedHeat, BOOK, type Stepper } from '../disc/stepper.ts';
import type { CornerModel, StintModel } from './compile.ts';
import { faceOverCore } from './damage.ts';
import { judge, windowOf } from './judge.ts';
import { summariseLaps, type Watched } from './lap-summary.ts';
import { identity, memo } from './memo.ts';
import { frictionOf, type Friction } from './pedal.ts';
import type { Clock, CornerResult, Ledger } from './result.ts';

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

/** Four corners of a car, and those of the stint before. */
const KEPT = 8;

interface Drive {
  model: StintModel;
  corner: CornerModel;
  clock: Clock;
}

/** The same, with its columns; both are shared by all who ask again, and are not to be changed. */
export const rememberedCorner: (drive: Drive) => JudgedCorner & { columns: CornerColumns } = memo(
  KEPT,
  ({ model, corner }: Drive) => [
    corner.corner,
    corner.spec,
    corner.start,
    corner.shares,
    // maps and plans come from memories of their own: alike, they are the same
    corner.maps.map(identity),
    model.passages.map((p) =>
      p.kind === 'stand'
        ? [p.leg, identity(p.plan)]
        : [p.leg, identity(p.plan), p.kind, p.lap, p.counted, p.massRatio],
    ),
  ],
  ({ model, corner, clock }) => {
    const columns = newColumns(model.samples);
    return { ...judgedCorner(model, corner, clock, columns), columns };
  },
);

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
