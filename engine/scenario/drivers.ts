/** Driving styles that ship with Emberlap, invented; the first is the driver that came with the car. */
import earlySoft from '../../scenarios/drivers/early-soft.json' with { type: 'json' };
import gentle from '../../scenarios/drivers/gentle.json' with { type: 'json' };
import lateHard from '../../scenarios/drivers/late-hard.json' with { type: 'json' };
import ownDriver from '../../scenarios/drivers/own.json' with { type: 'json' };
import { defaultScenario } from './default-scenario.ts';
import { entryOf, type Entry } from './entry.ts';
import type { Scenario } from './schema.ts';

const files = [ownDriver, earlySoft, gentle, lateHard];

export const drivers: readonly Entry[] = files;

/** What a phase sets to put another style at the wheel; what a style does not say stays as the scenario's driver has it. */
export function driverChanges(
  id: string,
  { driver }: Scenario = defaultScenario(),
): Readonly<Record<string, number>> {
  const style = { ...driver, ...entryOf(files, id).driver };
  return Object.fromEntries(Object.entries(style).map(([key, value]) => [`driver.${key}`, value]));
}
