/** Looks at one corner under different blankings, each run once, with a rest after every run. */
import {
  compile,
  withBlanking,
  type CompileOptions,
  type CornerModel,
  type StintModel,
} from '../stint/compile.ts';
import type { CornerResult } from '../stint/result.ts';
import { clockOf, runCorner } from '../stint/run.ts';
import type { Scenario } from '../scenario/schema.ts';
import type { Spare } from './span.ts';

/** A search under way: gives control back after every run, so that whoever drives it may stop in between. */
export type Search<T> = Generator<void, T>;

/** Drives a search to its end without a rest. */
export function finished<T>(search: Search<T>): T {
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

/** The summary of a corner at a blanking [percent]. */
export type Look = (blanking_pct: number) => Search<CornerResult>;

/** A corner, the way to look at it, and the first lap on which a phase has blanked its mouth anew; null where none does. */
export interface Sight {
  corner: CornerModel;
  look: Look;
  changesOn: number | null;
}

export function looksAt(scenario: Scenario, options: CompileOptions): Sight[] {
  const model = compile(scenario, options);
  return model.corners.map((corner) => ({
    corner,
    look: lookAt(model, corner),
    changesOn: lapOfChange(model, corner),
  }));
}

function lapOfChange({ scenario, passages }: StintModel, { corner }: CornerModel): number | null {
  const sides = corner.side === 'both' ? ['left', 'right'] : [corner.side];
  const axle = `blanking_pct.${corner.axle}`;
  const keys = [axle, ...sides.map((side) => `${axle}_${side}`)];
  const phase = scenario.stint.phases.findIndex(({ set = {} }) => keys.some((key) => key in set));
  const next = phase < 0 ? undefined : passages.find(({ leg, kind }) => leg >= phase && kind !== 'stand');
  return next && next.kind !== 'stand' ? next.lap : null;
}

function lookAt(model: StintModel, corner: CornerModel): Look {
  const clock = clockOf(model);
  const seen = new Map<number, CornerResult>();
  return function* (blanking_pct) {
    const known = seen.get(blanking_pct);
    if (known) return known;
    const result = runCorner(model, withBlanking(model, corner, blanking_pct), clock, 'summary');
    seen.set(blanking_pct, result);
    yield;
    return result;
  };
}

export const smallerMargin_K = ({ hotMargin_K, coldMargin_K }: Pick<Spare, 'hotMargin_K' | 'coldMargin_K'>) =>
  Math.min(hotMargin_K, coldMargin_K);

/** Beyond this fluid, bearing and pad lack air: proposed only where nothing less holds. Common practice, no source [%] */
export const MOST_PROPOSED_PCT = 85;
/**
 * The whole percent in a range with the largest smaller margin: where the hot margin, which falls, meets the cold one, which
 * grows. The middle of a range that has no whole percent.
 */
export function* bestBlanking(
  look: Look,
  [low, high]: readonly [number, number] = [0, MOST_PROPOSED_PCT],
): Search<number> {
  function* isHotter(blanking_pct: number): Search<boolean> {
    const { verdict } = yield* look(blanking_pct);
    return verdict.hotMargin_K < verdict.coldMargin_K;
  }
  let [cool, warm] = [Math.ceil(low), Math.floor(high)];
  if (cool > warm) return (low + high) / 2;
  if (yield* isHotter(cool)) return cool;
  if (!(yield* isHotter(warm))) return warm;
  while (warm - cool > 1) {
    const middle = Math.round((cool + warm) / 2);
    if (yield* isHotter(middle)) warm = middle;
    else cool = middle;
  }
  const [before, after] = [yield* look(cool), yield* look(warm)];
  return smallerMargin_K(before.verdict) >= smallerMargin_K(after.verdict) ? cool : warm;
}
