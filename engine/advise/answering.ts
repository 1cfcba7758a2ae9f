/** Runs what a search asks for. */
import { newColumns } from '../disc/columns.ts';
import { withChanges, type Changes } from '../scenario/changes.ts';
import { compile, withBlanking, type CornerModel, type StintModel } from '../stint/compile.ts';
import type { Scenario } from '../scenario/schema.ts';
import { judgedCorner, type JudgedCorner } from '../stint/driven.ts';
import { memo } from '../stint/memo.ts';
import type { Clock } from '../stint/result.ts';
import { clockOf } from '../stint/run.ts';
import type { Ask, At, Ground, Outcome } from './search.ts';
import { sensed } from './sensed.ts';
import { unknownsOf, type Unknown } from './unknowns.ts';

/** Models kept of a ground with changes: more than are tried side by side for one corner. The parts of a model have memories of their own. */
const MODELS = 16;

interface Ready {
  model: StintModel;
  clock: Clock;
}

/** The scenario with doubted values as given. */
type Supposing = (scenario: Scenario, values: readonly (readonly [Unknown, number])[]) => Scenario;

/**
 * Runs one ask after another on the same ground. Gives corner by corner, so that whoever waits for it may rest in between.
 *
 * @param supposing - for asks with doubted values; a search for spans has none
 */
export function answering(
  { scenario, driven = null, ...options }: Ground,
  supposing: Supposing | null = null,
): (ask: Ask) => Iterable<Outcome> {
  const ready = (of: typeof scenario, by: typeof driven): Ready => {
    const model = compile(of, { ...options, driven: by });
    return { model, clock: clockOf(model) };
  };
  const unknowns = new Map(unknownsOf(scenario).map((unknown) => [unknown.key, unknown]));
  const changed = memo(
    MODELS,
    (changes: Changes) => [changes],
    (changes) => ready(withChanges(scenario, changes), driven),
  );
  // nobody keeps them: all runs write into the same
  let columns = newColumns(0);
  // no draw comes twice
  const drawn = (values: Readonly<Record<string, number>>, changes: Changes): Ready => {
    if (!supposing) throw new Error('supposing: null');
    const supposed = Object.entries(values).map(([key, value]) => [unknowns.get(key)!, value] as const);
    return ready(supposing(withChanges(scenario, changes), supposed), driven && supposing(driven, supposed));
  };
  return function* ({ changes = {}, values, lag_s, at = [{}] }) {
    const { model, clock } = values ? drawn(values, changes) : changed(changes);
    if (model.samples > columns.face_K.length) columns = newColumns(2 * model.samples);
    for (const { blanking_pct, ...place } of at) {
      for (const corner of model.corners.filter((each) => isAt(each, place))) {
        const looked = blanking_pct === undefined ? corner : withBlanking(model, corner, blanking_pct);
        const judged = judgedCorner({ model, corner: looked, clock }, columns);
        const outcome = outcomeOf(judged);
        yield lag_s === undefined
          ? outcome
          : { ...outcome, sensed: sensed({ model, clock, face_K: columns.face_K, judged }, lag_s) };
      }
    }
  };
}

const isAt = ({ corner }: CornerModel, { axle, side }: At): boolean =>
  (!axle || corner.axle === axle) && (!side || [side, 'both'].includes(corner.side));

const outcomeOf = ({ axle, side, window, verdict, laps }: JudgedCorner): Outcome => ({
  axle,
  side,
  window,
  verdict,
  laps: laps.map((each) => ({
    lap: each.lap,
    kind: each.kind,
    in: each.in,
    tooHot: each.tooHot,
    tooCold: each.tooCold,
    hardStops: each.hardStops,
    faceMax_K: each.faceMax_K,
    facePeakPlace: each.facePeakPlace,
    bulkMax_K: each.bulkMax_K,
    bulkMean_K: each.bulkMean_K,
    coldestStop_K: each.coldestStop_K,
    coldestStopPlace: each.coldestStopPlace,
  })),
});
