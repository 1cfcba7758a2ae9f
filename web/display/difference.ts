/** What changed against a pinned run, in words; what did not is left out. */
import type { Axle, CornerResult, Scenario, StintResult, Verdict } from '../../engine/index.ts';
import { cornerInView } from './corner.ts';
import { isNothing, kelvins, NBSP } from './format.ts';
import { pinnedName } from './pinned-name.ts';

interface Run {
  scenario: Scenario;
  result: StintResult;
}

type Side = 'left' | 'right' | null;

/** "Against pinned 50 %: face peak 57 K hotter, coldest stop 58 K warmer, out from lap 5 instead of in throughout." */
export function differenceOf(
  pinned: Run,
  now: Run,
  axle: Axle,
  side: Side = null,
  name = pinnedName(pinned.scenario, now.scenario, axle),
): string {
  const before = cornerInView(pinned.result, axle, side);
  const after = cornerInView(now.result, axle, side);
  if (!before || !after) return '';
  const told = changesOf(before, after).map(({ words }) => words);
  return `Against ${name}: ${told.length > 0 ? told.join(', ') : `the ${axle} is the same`}.`;
}

/** What is told of one quantity. */
export interface Change {
  name: string;
  words: string;
  /** Both values; null of what is no number [K] */
  from: { was_K: number; is_K: number } | null;
}

/** What changed of a corner, in the order in which it is told. */
export function changesOf(before: CornerResult, after: CornerResult): Change[] {
  const [was, is] = [before.verdict, after.verdict];
  const wet = after.fluidMargin_K < 0 ? ', past its wet boiling point' : '';
  const told = {
    face: change('face peak', was.facePeak_K, is.facePeak_K, ['hotter', 'cooler']),
    stop: change('coldest stop', was.coldestStop_K, is.coldestStop_K, ['warmer', 'colder']),
    hot: change('hot limit', was.hotMargin_K, is.hotMargin_K, ['further', 'nearer']),
    cold: change('cold limit', was.coldMargin_K, is.coldMargin_K, ['further', 'nearer']),
    swing: change('swing', was.swing_K, is.swing_K, ['wider', 'narrower']),
    fluid: change('fluid', before.fluidPeak_K, after.fluidPeak_K, [`hotter${wet}`, `cooler${wet}`]),
  };
  return [
    told.face,
    told.stop,
    lapsOut(was, is),
    ...(saysItsOwn(told.hot, was.facePeak_K - is.facePeak_K) ? [told.hot] : []),
    ...(saysItsOwn(told.cold, (is.coldestStop_K ?? 0) - (was.coldestStop_K ?? 0)) ? [told.cold] : []),
    told.swing,
    told.fluid,
  ].filter((each) => each !== null);
}

/** Beyond this a margin is to a limit that nothing meets [K] */
const ENDLESS_K = 2000;

/** Whether a margin changed by other than what is told already: where another limit decides, or the window has moved. */
function saysItsOwn(margin: Change | null, told_K: number): boolean {
  if (!margin?.from) return false;
  const rise_K = margin.from.is_K - margin.from.was_K;
  return Math.abs(rise_K) < ENDLESS_K && !isNothing(rise_K - told_K);
}

/** "out from lap 5 instead of in throughout", and the other way. */
function lapsOut(before: Verdict, after: Verdict): Change | null {
  const wordsOf = ({ status, firstLapOut }: Verdict): string =>
    status === 'not judged'
      ? 'not judged'
      : firstLapOut === null
        ? 'in throughout'
        : `out from lap${NBSP}${firstLapOut}`;
  const [was, is] = [wordsOf(before), wordsOf(after)];
  return was === is ? null : { name: 'laps', words: `${is} instead of ${was}`, from: null };
}

/** null where, rounded as it is shown, nothing is left of it. */
function change(
  name: string,
  was_K: number | null,
  is_K: number | null,
  [up, down]: [up: string, down: string],
): Change | null {
  if (was_K === null || is_K === null) return null;
  const rise_K = is_K - was_K;
  return Number.isFinite(rise_K) && !isNothing(rise_K)
    ? { name, words: `${name} ${kelvins(rise_K)} ${rise_K > 0 ? up : down}`, from: { was_K, is_K } }
    : null;
}
