/** What changed against a pinned run, in words; what did not is left out. */
import type { Axle, CornerResult, Scenario, StintResult } from '../../engine/index.ts';
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
  const told = FACTS.map((fact) => fact(before, after)).filter(Boolean);
  return `Against ${name}: ${told.length > 0 ? told.join(', ') : `the ${axle} is the same`}.`;
}

type Fact = (before: CornerResult, after: CornerResult) => string;

const FACTS: readonly Fact[] = [facePeak, coldestStop, lapsOut, hotMargin, coldMargin, swing, fluid];

/** Beyond this a margin is to a limit that nothing meets [K] */
const ENDLESS_K = 2000;

function facePeak({ verdict: before }: CornerResult, { verdict: after }: CornerResult): string {
  return change('face peak', after.facePeak_K - before.facePeak_K, 'hotter', 'cooler');
}

function coldestStop({ verdict: before }: CornerResult, { verdict: after }: CornerResult): string {
  const [was, is] = [before.coldestStop_K, after.coldestStop_K];
  return was === null || is === null ? '' : change('coldest stop', is - was, 'warmer', 'colder');
}

/** "out from lap 5 instead of in throughout", and the other way. */
function lapsOut({ verdict: before }: CornerResult, { verdict: after }: CornerResult): string {
  const words = ({ status, firstLapOut }: CornerResult['verdict']): string =>
    status === 'not judged'
      ? 'not judged'
      : firstLapOut === null
        ? 'in throughout'
        : `out from lap${NBSP}${firstLapOut}`;
  const [was, is] = [words(before), words(after)];
  return was === is ? '' : `${is} instead of ${was}`;
}

/** Where it is not the face peak that decides, or the window has moved, its change says something of its own. */
function hotMargin(before: CornerResult, after: CornerResult): string {
  const rise_K = after.verdict.hotMargin_K - before.verdict.hotMargin_K;
  const fall_K = before.verdict.facePeak_K - after.verdict.facePeak_K;
  return margin('hot limit', rise_K, fall_K);
}

function coldMargin({ verdict: before }: CornerResult, { verdict: after }: CornerResult): string {
  const rise_K = after.coldMargin_K - before.coldMargin_K;
  const stop_K = (after.coldestStop_K ?? 0) - (before.coldestStop_K ?? 0);
  return margin('cold limit', rise_K, stop_K);
}

function margin(limit: string, rise_K: number, told_K: number): string {
  const isEndless = !(Math.abs(rise_K) < ENDLESS_K);
  return isEndless || isNothing(rise_K - told_K) ? '' : change(limit, rise_K, 'further', 'nearer');
}

function swing({ verdict: before }: CornerResult, { verdict: after }: CornerResult): string {
  return before.swing_K === null || after.swing_K === null
    ? ''
    : change('swing', after.swing_K - before.swing_K, 'wider', 'narrower');
}

function fluid(before: CornerResult, after: CornerResult): string {
  const rise_K = after.fluidPeak_K - before.fluidPeak_K;
  const word = after.fluidMargin_K < 0 ? ', past its wet boiling point' : '';
  return change('fluid', rise_K, `hotter${word}`, `cooler${word}`);
}

/** Empty where, rounded as it is shown, nothing is left of it. */
const change = (what: string, rise_K: number, up: string, down: string): string =>
  Number.isFinite(rise_K) && !isNothing(rise_K) ? `${what} ${kelvins(rise_K)} ${rise_K > 0 ? up : down}` : '';
