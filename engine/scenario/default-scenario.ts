/** The stint the page opens with, from its files alone: a page that shows it does without the rest of the library. */
import base from '../../scenarios/base.json' with { type: 'json' };
import heavy from '../../scenarios/cars/heavy.json' with { type: 'json' };
import sorrelby from '../../scenarios/circuits/sorrelby.json' with { type: 'json' };
import twenty from '../../scenarios/stints/sorrelby-20.json' with { type: 'json' };
import type { Scenario } from './schema.ts';
import { layOver } from './tree.ts';

/** A file of the library, by the list it is in. */
export const opening = { car: heavy, circuit: sorrelby, stint: twenty };

/** What a file of the catalogue says of the scenario, in the place of what the parts before it say, over what all share. */
export const laidOverBase = (parts: readonly object[]): object =>
  parts.reduce<object>((whole, part) => layOver(whole, part) as object, base);

export const circuitPart = ({ name, segments }: typeof sorrelby): { circuit: object } => ({
  circuit: { name, segments },
});

/** It also fills the gaps of a scenario file. */
export function defaultScenario(): Scenario {
  const { name, purpose, scenario } = twenty;
  return laidOverBase([
    heavy.scenario,
    circuitPart(sorrelby),
    { name, purpose },
    scenario,
  ]) as unknown as Scenario;
}
