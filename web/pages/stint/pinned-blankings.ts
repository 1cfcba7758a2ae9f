/** What pinned runs had, on the map of all blankings: a blanking of this map, or of another one, and then why. */
import type { CornerResult, Scenario } from '../../../engine/index.ts';
import { valueAt } from '../../../engine/scenario/tree.ts';
import type { PinnedBlanking } from '../../charts/blanking-words.ts';
import { blankingOf } from '../../display/corner.ts';
import { capital } from '../../display/format.ts';
import { pinnedNames } from '../../display/pinned-name.ts';
import type { Pin } from '../../state/pins.svelte.ts';
import { isSameBut } from '../../state/span-ground.ts';
import { endName } from './over-chart.ts';

/** Room beside the map [px] */
const LABEL_PX = 78;

export interface PinnedBlankings {
  marked: PinnedBlanking[];
  /** A sentence for each that is not on this map. */
  left: string[];
}

/** Corners do not know of each other: what other mouths have does not part two maps. */
const isSameMap = isSameBut('name', 'purpose', 'doubt', 'blanking_pct');

/** In the order in which a person would name them. */
const OTHERS: readonly [key: string, words: string][] = [
  ['car.name', 'another car'],
  ['circuit.name', 'another circuit'],
  ['trace', 'another trace'],
  ['conditions.ambient_C', 'another ambient'],
  ['conditions.wet', 'another track, wet or dry'],
  ['conditions.altitude_m', 'another altitude'],
  ['conditions', 'other weather'],
  ['traffic', 'other traffic'],
  ['stint.laps', 'another number of laps'],
  ['stint', 'other phases'],
  ['driver', 'another driver'],
  ['car', 'another setting of the car'],
  ['brakes', 'other brakes or another window'],
];

export function pinnedBlankings(
  pins: readonly Pin[],
  now: Scenario,
  corner: Pick<CornerResult, 'axle' | 'side'>,
): PinnedBlankings {
  const scenarios = pins.map(({ scenario }) => scenario);
  const names = pinnedNames(scenarios, now, corner.axle);
  const found: PinnedBlankings = { marked: [], left: [] };
  pins.forEach(({ scenario, dash }, i) => {
    if (scenario === now) return;
    const name = names[i] ?? '';
    const blanking_pct = blankingOf(scenario, corner);
    if (blanking_pct !== null && isSameMap(scenario, now))
      found.marked.push({ name, label: endName(name, LABEL_PX), dash, blanking_pct });
    else found.left.push(`${capital(name)} is not drawn: it has ${otherWords(scenario, now)}.`);
  });
  return found;
}

function otherWords(pinned: Scenario, now: Scenario): string {
  const differs = (key: string): boolean => !isSame(valueAt(pinned, key), valueAt(now, key));
  return OTHERS.find(([key]) => differs(key))?.[1] ?? 'another setting';
}

const isSame = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);
