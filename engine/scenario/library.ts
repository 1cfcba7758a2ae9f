/** The cars, circuits and stints that ship with Emberlap, put together into whole scenarios. All are invented. */
import base from '../../scenarios/base.json' with { type: 'json' };
import heavy from '../../scenarios/cars/heavy.json' with { type: 'json' };
import light from '../../scenarios/cars/light.json' with { type: 'json' };
import long from '../../scenarios/circuits/long.json' with { type: 'json' };
import slow from '../../scenarios/circuits/slow.json' with { type: 'json' };
import sorrelby from '../../scenarios/circuits/sorrelby.json' with { type: 'json' };
import earlySoft from '../../scenarios/drivers/early-soft.json' with { type: 'json' };
import gentle from '../../scenarios/drivers/gentle.json' with { type: 'json' };
import lateHard from '../../scenarios/drivers/late-hard.json' with { type: 'json' };
import ownDriver from '../../scenarios/drivers/own.json' with { type: 'json' };
import clubEvening from '../../scenarios/stints/club-evening.json' with { type: 'json' };
import hour from '../../scenarios/stints/hour.json' with { type: 'json' };
import nightRain from '../../scenarios/stints/night-rain.json' with { type: 'json' };
import restart from '../../scenarios/stints/restart.json' with { type: 'json' };
import twenty from '../../scenarios/stints/sorrelby-20.json' with { type: 'json' };
import { isTree, layOver } from './tree.ts';
import type { Scenario } from './schema.ts';

/** An entry of the library as a list shows it. */
export interface Entry {
  id: string;
  name: string;
  purpose: string;
}

const carFiles = [heavy, light];
const circuitFiles = [sorrelby, long, slow];
const driverFiles = [ownDriver, earlySoft, gentle, lateHard];
const stintFiles = [twenty, restart, hour, nightRain, clubEvening];

export const cars: readonly Entry[] = carFiles;
export const circuits: readonly Entry[] = circuitFiles;
export const stints: readonly Entry[] = stintFiles;
/** Driving styles, invented; the first is the driver that came with the car. */
export const drivers: readonly Entry[] = driverFiles;

/** The whole scenario of a shipped stint. Throws on an id that is not in the library. */
export function shippedStint(id: string): Scenario {
  return assembled(entry(stintFiles, id)) as unknown as Scenario;
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
export function assembled({ name, purpose, car, circuit, scenario }: CatalogueFile): object {
  const parts = [
    entry(carFiles, car ?? twenty.car).scenario,
    circuitPart(circuit ?? twenty.circuit),
    { name, purpose },
    scenario,
  ];
  return parts.reduce<object>((whole, part) => layOver(whole, part) as object, base);
}

export const isCatalogueFile = (file: unknown): file is CatalogueFile =>
  isTree(file) && isTree(file.scenario) && typeof file.name === 'string';

/** The stint the page opens with, and what fills the gaps of a scenario file. */
export const defaultScenario = (): Scenario => shippedStint(twenty.id);

/** The same stint with another car: its driver, brakes, windows, doubts about them and shipped blanking come with it. */
export function withCar(scenario: Scenario, id: string): Scenario {
  const { car, driver, brakes, blanking_pct, doubt } = entry(carFiles, id).scenario;
  const others = Object.entries(scenario.doubt).filter(([key]) => !/^(car|driver|brakes)\./.test(key));
  return {
    ...scenario,
    ...{ car, driver, brakes, blanking_pct, sides: {} },
    doubt: { ...Object.fromEntries(others), ...doubt },
  } as unknown as Scenario;
}

/** The same stint on another circuit, driven by the model: a measured trace is left behind. */
export function withCircuit(scenario: Scenario, id: string): Scenario {
  return { ...scenario, ...circuitPart(id), trace: null } as Scenario;
}

/** What a phase sets to put another style at the wheel; what a style does not say stays as the scenario's driver has it. */
export function driverChanges(
  id: string,
  { driver }: Scenario = defaultScenario(),
): Readonly<Record<string, number>> {
  const style = { ...driver, ...entry(driverFiles, id).driver };
  return Object.fromEntries(Object.entries(style).map(([key, value]) => [`driver.${key}`, value]));
}

function circuitPart(id: string): { circuit: object } {
  const { name, segments } = entry(circuitFiles, id);
  return { circuit: { name, segments } };
}

function entry<T extends Entry>(files: readonly T[], id: string): T {
  const found = files.find((file) => file.id === id);
  if (!found) throw new Error(`not in the library: ${id}`);
  return found;
}
