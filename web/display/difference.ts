/** What changed against the pinned run, in words. */
import type { Axle, CornerResult, Scenario, StintResult } from '../../engine/index.ts';
import { cornerInView } from './corner.ts';
import { kelvins } from './format.ts';
import { pinnedName } from './pinned-name.ts';

interface Run {
  scenario: Scenario;
  result: StintResult;
}

/** "Against pinned 50 %: face peak 57 K hotter, coldest stop 58 K warmer, first lap out 5 instead of none." */
export function differenceOf(
  pinned: Run,
  now: Run,
  axle: Axle,
  side: 'left' | 'right' | null = null,
): string {
  const before = cornerInView(pinned.result, axle, side);
  const after = cornerInView(now.result, axle, side);
  if (!before || !after) return '';
  const parts = [facePeak(before, after), coldestStop(before, after), firstLapOut(before, after)];
  return `Against ${pinnedName(pinned.scenario, now.scenario, axle)}: ${parts.filter(Boolean).join(', ')}.`;
}

function facePeak(before: CornerResult, after: CornerResult): string {
  const rise_K = after.verdict.facePeak_K - before.verdict.facePeak_K;
  return change('face peak', rise_K, 'hotter', 'cooler');
}

function coldestStop(before: CornerResult, after: CornerResult): string {
  const [was, is] = [before.verdict.coldestStop_K, after.verdict.coldestStop_K];
  return was === null || is === null ? '' : change('coldest stop', is - was, 'warmer', 'colder');
}

function change(what: string, rise_K: number, up: string, down: string): string {
  if (Math.abs(rise_K) < 0.5) return `${what} the same`;
  return `${what} ${kelvins(rise_K)} ${rise_K > 0 ? up : down}`;
}

function firstLapOut(before: CornerResult, after: CornerResult): string {
  const [was, is] = [before.verdict.firstLapOut, after.verdict.firstLapOut];
  if (was === is) return is === null ? 'no lap out in either' : `first lap out ${is} in both`;
  return `first lap out ${is ?? 'none'} instead of ${was ?? 'none'}`;
}
