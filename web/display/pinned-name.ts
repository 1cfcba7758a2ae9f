/** What pinned runs are called beside the one shown: after what tells them from it, and from each other. */
import type { Axle, Scenario } from '../../engine/index.ts';
import { fieldAt } from '../../engine/scenario/keys.ts';
import { valueAt } from '../../engine/scenario/tree.ts';
import { unitOf } from '../../engine/scenario/field.ts';
import { nameOf } from '../../engine/scenario/key-name.ts';
import { digitsOf, withUnit } from './format.ts';

/** Something that may tell two scenarios apart, as it is said of one of them. */
type Fact = (of: Scenario) => string;

/** In the order in which a person would name them. */
const factsOf = (axle: Axle): Fact[] => [
  ({ car }) => car.name,
  ({ circuit, trace }) => trace?.name ?? circuit.name,
  (of) => withUnit(of.blanking_pct[axle], '%'),
  ...[
    `blanking_pct.${axle}_left`,
    `blanking_pct.${axle}_right`,
    `blanking_pct.${axle === 'front' ? 'rear' : 'front'}`,
    'conditions.wet',
    'conditions.ambient_C',
    'traffic.gap_m',
    'conditions.altitude_m',
    'stint.laps',
    'car.brake_balance_front',
    `brakes.${axle}.window.face_peak_C`,
    `brakes.${axle}.window.bite_C`,
  ].map(
    (key): Fact =>
      (of) =>
        named(key, valueAt(of, key)),
  ),
  ({ name }) => name,
];

function named(key: string, value: unknown): string {
  if (key === 'conditions.wet') return value === true ? 'wet' : 'dry';
  if (key === 'traffic.gap_m' && typeof value !== 'number') return 'in clear air';
  if (typeof value !== 'number') return '';
  const label = fieldAt(key) ? nameOf(key) : key;
  return `at ${label} ${withUnit(value, unitOf(key), digitsOf(value, 3))}`;
}

/** "pinned 50 %", "pinned at ambient 20 °C": named after the first thing that tells it from now. */
export const pinnedName = (pinned: Scenario, now: Scenario, axle: Axle): string =>
  pinnedNames([pinned], now, axle)[0] ?? '';

/**
 * The same of several: where two would be called alike, each is also called by the first thing that tells them apart, as
 * "pinned 50 %, wet"; at last by a number.
 */
export function pinnedNames(pinned: readonly Scenario[], now: Scenario, axle: Axle): string[] {
  const facts = factsOf(axle);
  const names = pinned.map((one) => {
    const said = new Set<string>();
    const say = (fact: Fact | undefined): void => void (fact?.(one) && said.add(fact(one)));
    say(facts.find((fact) => fact(one) !== fact(now)));
    for (const other of pinned) {
      const isTold = facts.some((fact) => said.has(fact(one)) && fact(other) !== fact(one));
      if (other !== one && !isTold) say(facts.find((fact) => fact(one) !== fact(other)));
    }
    return ['pinned', [...said].join(', ').replaceAll(', at ', ', ')].filter(Boolean).join(' ');
  });
  return names.map((name, i) => {
    const before = names.slice(0, i).filter((other) => other === name).length;
    return before > 0 ? `${name} (${before + 1})` : name;
  });
}
