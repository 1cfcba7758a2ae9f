/** The cars, circuits and stints that ship with Emberlap, put together into whole scenarios. All are invented. */
import light from '../../scenarios/cars/light.json' with { type: 'json' };
import long from '../../scenarios/circuits/long.json' with { type: 'json' };
import slow from '../../scenarios/circuits/slow.json' with { type: 'json' };
import clubEvening from '../../scenarios/stints/club-evening.json' with { type: 'json' };
import hour from '../../scenarios/stints/hour.json' with { type: 'json' };
import nightRain from '../../scenarios/stints/night-rain.json' with { type: 'json' };
import restart from '../../scenarios/stints/restart.json' with { type: 'json' };
import { circuitPart, laidOverBase, opening } from './default-scenario.ts';
import { entryOf, type Entry } from './entry.ts';
import type { Scenario } from './schema.ts';
import { isTree } from './tree.ts';

export { defaultScenario } from './default-scenario.ts';
export { driverChanges, drivers } from './drivers.ts';

const carFiles = [opening.car, light];
const circuitFiles = [opening.circuit, long, slow];
const stintFiles = [opening.stint, restart, hour, nightRain, clubEvening];

export const cars: readonly Entry[] = carFiles;
export const circuits: readonly Entry[] = circuitFiles;
export const stints: readonly Entry[] = stintFiles;

/** The whole scenario of a shipped stint. Throws on an id that is not in the library. */
export function shippedStint(id: string): Scenario {
  return assembled(entryOf(stintFiles, id)) as unknown as Scenario;
}

/** A file of the catalogue: what it is called, the car and circuit it names, and what it says of the scenario. */
export interface CatalogueFile {
  name: string;
  purpose: string;
  car?: string;
  circuit?: string;
  scenario: object;
}

/** The whole of what a file of the catalogue says, unchecked. Throws on a car or circuit that is not in the library. */
export const assembled = ({ name, purpose, car, circuit, scenario }: CatalogueFile): object =>
  laidOverBase([
    entryOf(carFiles, car ?? opening.stint.car).scenario,
    circuitPart(entryOf(circuitFiles, circuit ?? opening.stint.circuit)),
    { name, purpose },
    scenario,
  ]);

export const isCatalogueFile = (file: unknown): file is CatalogueFile =>
  isTree(file) && isTree(file.scenario) && typeof file.name === 'string';

/** The same stint with another car: its driver, brakes, windows, doubts about them and shipped blanking come with it. */
export function withCar(scenario: Scenario, id: string): Scenario {
  const { car, driver, brakes, blanking_pct, doubt } = entryOf(carFiles, id).scenario;
  const others = Object.entries(scenario.doubt).filter(([key]) => !/^(car|driver|brakes)\./.test(key));
  return {
    ...scenario,
    ...{ car, driver, brakes, blanking_pct, sides: {} },
    doubt: { ...Object.fromEntries(others), ...doubt },
  } as unknown as Scenario;
}

/** The same stint on another circuit, driven by the model: a measured trace is left behind. */
export function withCircuit(scenario: Scenario, id: string): Scenario {
  return { ...scenario, ...circuitPart(entryOf(circuitFiles, id)), trace: null } as Scenario;
}
