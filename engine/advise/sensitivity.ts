/** Which unknown matters most: each moved alone to both ends of its range, all others as they are likely. */
import type { Scenario } from '../scenario/schema.ts';
import type { CompileOptions } from '../stint/compile.ts';
import type { CornerSensitivity, Effect, Shift } from './doubt.ts';
import { cornerAt } from './corner-at.ts';
import type { Ask, Outcome, Search, Steps } from './search.ts';
import { axleOf, unknownsOf, type Unknown } from './unknowns.ts';

/** An unknown that moves less than this is not worth measuring [K] */
const LEAST_TOLD_K = 1;

/** Every corner by itself; all ends of all ranges may run at once. */
export const sensitivity = (
  scenario: Scenario,
  options: CompileOptions = {},
): Search<CornerSensitivity[]> => ({
  ground: { scenario, ...options },
  steps: moving(scenario),
});

function* moving(scenario: Scenario): Steps<CornerSensitivity[]> {
  const unknowns = unknownsOf(scenario);
  const [likely = [], ...ends] = yield [{}, ...unknowns.flatMap(endsOf)];
  const found = likely.map(({ axle, side, verdict }) => ({
    axle,
    side,
    failsFirst: verdict.hotMargin_K <= verdict.coldMargin_K ? ('hot' as const) : ('cold' as const),
    effects: [] as Effect[],
  }));
  for (const [at, unknown] of unknowns.entries()) {
    const axle = axleOf(unknown.key);
    for (const [i, corner] of likely.entries()) {
      if (axle !== null && corner.axle !== axle) continue;
      const { failsFirst, effects } = found[i]!;
      const atLow = shiftOf(corner, cornerAt(ends[2 * at]!, corner));
      const atHigh = shiftOf(corner, cornerAt(ends[2 * at + 1]!, corner));
      effects.push(effectOf(unknown, atLow, atHigh, failsFirst));
    }
  }
  return found.map(({ effects, ...corner }) => {
    const ranked = effects.sort((a, b) => b.moves_K - a.moves_K);
    const [first] = ranked;
    return {
      ...corner,
      effects: ranked,
      measureFirst: first && first.moves_K >= LEAST_TOLD_K ? first : null,
    };
  });
}

/** Both ends of its range, on the axle that feels it. */
function endsOf({ key, low, high }: Unknown): Ask[] {
  const axle = axleOf(key);
  return [low, high].map((value) => ({ values: { [key]: value }, ...(axle && { at: [{ axle }] }) }));
}

function effectOf(unknown: Unknown, atLow: Shift, atHigh: Shift, failsFirst: 'hot' | 'cold'): Effect {
  const margin = failsFirst === 'hot' ? 'hotMargin_K' : 'coldMargin_K';
  const moved = [0, atLow[margin], atHigh[margin]];
  return { ...unknown, atLow, atHigh, moves_K: (Math.max(...moved) - Math.min(...moved)) / 2 };
}

function shiftOf({ verdict: from }: Outcome, { verdict: to }: Outcome): Shift {
  const isStill = from.coldestStop_K === null || to.coldestStop_K === null;
  return {
    facePeak_K: to.facePeak_K - from.facePeak_K,
    coldestStop_K: isStill ? null : to.coldestStop_K! - from.coldestStop_K!,
    hotMargin_K: difference(from.hotMargin_K, to.hotMargin_K),
    coldMargin_K: difference(from.coldMargin_K, to.coldMargin_K),
  };
}

/** A margin to a limit that nothing meets is endless, and does not move. */
const difference = (from: number, to: number): number =>
  Number.isFinite(from) && Number.isFinite(to) ? to - from : 0;
