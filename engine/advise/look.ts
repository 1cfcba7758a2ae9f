/** Looks at one corner under different blankings, each run once. */
import { withChanges, type Changes } from '../scenario/changes.ts';
import { cornersOf, type Corner } from '../stint/corners.ts';
import { legsOf, type Leg } from '../stint/legs.ts';
import type { Scenario } from '../scenario/schema.ts';
import type { Ask, Outcome, Steps } from './search.ts';
import { smallerMargin_K } from './span.ts';

/** What comes of a corner at a blanking [percent]. */
export type Look = (blanking_pct: number) => Steps<Outcome>;

/** A corner, the way to look at it, and the first lap on which a phase has blanked its mouth anew; null where none does. */
export interface Sight {
  corner: Corner;
  look: Look;
  changesOn: number | null;
}

/** Every corner of a scenario, or of what it is with checked changes. */
export function looksAt(scenario: Scenario, changes: Changes = {}): Sight[] {
  const changed = withChanges(scenario, changes);
  const legs = legsOf(changed);
  const through = legs.map((leg) => leg.scenario);
  return cornersOf(changed, through).map((corner) => ({
    corner,
    look: lookAt(corner, changes),
    changesOn: lapOfChange(changed, legs, corner),
  }));
}

function lapOfChange({ stint }: Scenario, legs: readonly Leg[], { axle, side }: Corner): number | null {
  const sides = side === 'both' ? ['left', 'right'] : [side];
  const ofAxle = `blanking_pct.${axle}`;
  const keys = [ofAxle, ...sides.map((each) => `${ofAxle}_${each}`)];
  const phase = stint.phases.findIndex(({ set = {} }) => keys.some((key) => key in set));
  if (phase < 0) return null;
  const lapsOf = (leg: Leg): number => (leg.kind === 'stand' ? 0 : leg.laps);
  const isDrivenAfter = legs.some((leg, i) => i >= phase && lapsOf(leg) > 0);
  return isDrivenAfter ? 1 + legs.slice(0, phase).reduce((sum, leg) => sum + lapsOf(leg), 0) : null;
}

function lookAt({ axle, side }: Corner, changes: Changes): Look {
  const asked = new Map<number, Ask>();
  const seen = new Map<number, Outcome>();
  return function* (blanking_pct) {
    const known = seen.get(blanking_pct);
    if (known) return known;
    // the same ask while it is under way: two that wait for it are told together
    const ask = asked.get(blanking_pct) ?? { changes, at: [{ axle, side, blanking_pct }] };
    asked.set(blanking_pct, ask);
    const answers = yield [ask];
    const outcome = answers[0]?.[0];
    if (!outcome) throw new Error(`no corner: ${axle} ${side}`);
    seen.set(blanking_pct, outcome);
    return outcome;
  };
}

/** Beyond this fluid, bearing and pad lack air: proposed only where nothing less holds. Common practice, no source [%] */
export const MOST_PROPOSED_PCT = 85;

/**
 * The best of what can be made in a range: an open mouth, or from the least that a blank covers on. Where nothing there can be, the
 * best that there would be.
 */
export function* bestBlanking(
  look: Look,
  least_pct: number,
  [low, high]: readonly [number, number] = [0, MOST_PROPOSED_PCT],
): Steps<number> {
  const isOpenIn = low === 0;
  if (low >= least_pct || (least_pct > high && !isOpenIn)) return yield* mostToSpare(look, [low, high]);
  const covered = least_pct <= high ? yield* mostToSpare(look, [least_pct, high]) : 0;
  if (!isOpenIn) return covered;
  const [open, other] = [yield* look(0), yield* look(covered)];
  return smallerMargin_K(other.verdict) > smallerMargin_K(open.verdict) ? covered : 0;
}

/**
 * The whole percent in a range with the largest smaller margin: where the hot margin, which falls, meets the cold one, which
 * grows. The middle of a range that has no whole percent.
 */
function* mostToSpare(look: Look, [low, high]: readonly [number, number]): Steps<number> {
  function* isHotter(blanking_pct: number): Steps<boolean> {
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
