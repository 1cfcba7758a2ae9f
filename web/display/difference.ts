/** What changed against the pinned run, in words. */
import type { Axle, CornerResult, Scenario, StintResult } from '../../engine/index.ts';
import { fieldAt } from '../../engine/scenario/keys.ts';
import { valueAt } from '../../engine/scenario/tree.ts';
import { unitOf } from '../../engine/scenario/field.ts';
import { cornerInView } from './corner.ts';
import { kelvins, withUnit } from './format.ts';

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

/** "pinned 50 %", "pinned at ambient 20 °C": named after the first thing that tells it from now. */
export function pinnedName(pinned: Scenario, now: Scenario, axle: Axle): string {
  if (pinned.car.name !== now.car.name) return `pinned ${pinned.car.name}`;
  if (pinned.circuit.name !== now.circuit.name) return `pinned ${pinned.circuit.name}`;
  if (pinned.blanking_pct[axle] !== now.blanking_pct[axle])
    return `pinned ${withUnit(pinned.blanking_pct[axle], '%')}`;
  const other = axle === 'front' ? 'rear' : 'front';
  const keys = [
    `blanking_pct.${other}`,
    'conditions.wet',
    'conditions.ambient_C',
    'traffic.gap_m',
    'conditions.altitude_m',
    'stint.laps',
  ];
  const key = keys.find((each) => valueAt(pinned, each) !== valueAt(now, each));
  return key ? `pinned ${named(key, valueAt(pinned, key))}` : 'pinned';
}

function named(key: string, value: unknown): string {
  if (key === 'conditions.wet') return value === true ? 'wet' : 'dry';
  if (key === 'traffic.gap_m' && typeof value !== 'number') return 'in clear air';
  const label = (fieldAt(key)?.label ?? key).toLowerCase();
  return `at ${label} ${withUnit(Number(value), unitOf(key))}`;
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
