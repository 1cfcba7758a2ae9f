/** Drives a corner through the whole stint and judges it; remembers the last few, for a hand changes one axle at a time. */
import { newColumns, type CornerColumns } from '../disc/columns.ts';
import { driveLap } from '../disc/kernel.ts';
import { createStepper, type Stepper } from '../disc/stepper.ts';
import { entryOf, ledgersOf, type Entry } from './books.ts';
import type { CornerModel, StintModel } from './compile.ts';
import { faceOverCore } from './damage.ts';
import { judge, windowOf } from './judge.ts';
import { summariseLaps, type Watched } from './lap-summary.ts';
import { identity, memo } from './memo.ts';
import { frictionOf, type Friction } from './pedal.ts';
import type { Clock, CornerResult, Ledgers } from './result.ts';

/** A corner driven through the whole stint and judged; what a search reads. */
export interface JudgedCorner extends Pick<
  CornerResult,
  'axle' | 'side' | 'window' | 'laps' | 'stops' | 'verdict'
> {
  friction: Friction;
}

interface Drive {
  model: StintModel;
  corner: CornerModel;
  clock: Clock;
}

/**
 * Drives a corner into columns that have room for all samples.
 *
 * @param note - is shown the corner at the start and at the end of each passage
 */
export function judgedCorner(
  { model, corner, clock }: Drive,
  trace: CornerColumns,
  note: (stepper: Stepper) => void = () => undefined,
): JudgedCorner {
  const { axle, side, brake } = corner.corner;
  const stepper = createStepper(corner.spec, corner.start);
  note(stepper);
  let sample = 0;
  for (const passage of model.passages) {
    const share = corner.shares[passage.leg]! * (passage.kind === 'stand' ? 1 : passage.massRatio);
    const steps = passage.kind === 'stand' ? passage.plan : passage.plan.axles[axle];
    driveLap(stepper, steps, share, corner.maps[passage.leg]!, trace, sample);
    note(stepper);
    sample += passage.plan.steps;
  }
  const window = windowOf(brake);
  const friction = frictionOf(brake, window);
  const overCore_K = faceOverCore(trace, model.samples);
  const watched: Watched = { model, trace, overCore_K, clock, window, friction, axle };
  const { laps, stops } = summariseLaps(watched, brake);
  const verdict = judge(laps, window, brake.window.from_lap);
  return { axle, side, window, laps, stops, verdict, friction };
}

/** Four corners of a car, and those of the stint before. */
const KEPT = 8;

/** The same, with its columns; both are shared by all who ask again, and are not to be changed. */
export const rememberedCorner: (drive: Drive) => JudgedCorner & Ledgers & { columns: CornerColumns } = memo(
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
  (drive) => {
    const columns = newColumns(drive.model.samples);
    const entries: Entry[] = [];
    const judged = judgedCorner(drive, columns, (stepper) => entries.push(entryOf(stepper)));
    return { ...judged, ...ledgersOf(drive.model.passages, entries), columns };
  },
);
