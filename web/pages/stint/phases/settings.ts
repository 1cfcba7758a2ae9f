/** What a phase may change from there on, as the editor offers it. */
import type { Phase, Scenario, Value } from '../../../../engine/index.ts';
import { fieldAt } from '../../../../engine/scenario/keys.ts';
import { valueAt } from '../../../../engine/scenario/tree.ts';
import { driverChanges, drivers } from '../../../../engine/scenario/drivers.ts';
import { driverId, isStand } from '../../../display/phase-plan.ts';

const NAMES: Record<string, string> = {
  'blanking_pct.front': 'Tape, front',
  'blanking_pct.rear': 'Tape, rear',
  'conditions.ambient_C': 'Ambient',
  'conditions.wet': 'Track',
  'car.brake_balance_front': 'Balance',
  'car.fuel_kg': 'Fuel',
  driver: 'Driver',
};

const ON_TRACK = ['conditions.ambient_C', 'conditions.wet', 'car.brake_balance_front'];
const AT_A_STOP = ['car.fuel_kg', 'driver'];

export const settingName = (key: string): string => NAMES[key] ?? fieldAt(key)?.label ?? key;

/** A driver is one setting, whatever it is made of. */
const settingOf = (key: string): string => (key.startsWith('driver.') ? 'driver' : key);

export const isSet = (phase: Phase, key: string): boolean =>
  Object.keys(phase.set ?? {}).some((each) => settingOf(each) === key);

/** Keys worth offering for a phase: tape first at a stop; whatever a file sets beyond them as well. */
export function settingsOf(phase: Phase, { brakes }: Scenario): string[] {
  const tape = (['front', 'rear'] as const)
    .filter((axle) => brakes[axle].duct)
    .map((axle) => `blanking_pct.${axle}`);
  const offered = isStand(phase) ? [...tape, ...AT_A_STOP, ...ON_TRACK] : [...ON_TRACK, ...tape];
  return [...new Set([...offered, ...Object.keys(phase.set ?? {}).map(settingOf)])];
}

/** What to change so that a setting begins here: the value that held before; of two the other one. */
export function begun(key: string, before: Scenario, start: Scenario): Record<string, Value> {
  if (key === 'conditions.wet') return { [key]: !before.conditions.wet };
  if (key !== 'driver') return { [key]: (valueAt(before, key) ?? null) as Value };
  const at = drivers.findIndex(({ id }) => id === driverId(before, start));
  return driverChanges(drivers[(at + 1) % drivers.length]?.id ?? '', start);
}

/** What to change so that it is again as before the phase. */
export const ended = (key: string, phase: Phase): Record<string, undefined> =>
  Object.fromEntries(
    Object.keys(phase.set ?? {})
      .filter((each) => settingOf(each) === key)
      .map((each) => [each, undefined]),
  );
