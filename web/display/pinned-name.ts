/** What a pinned run is called beside the one shown. */
import type { Axle, Scenario } from '../../engine/index.ts';
import { fieldAt } from '../../engine/scenario/keys.ts';
import { valueAt } from '../../engine/scenario/tree.ts';
import { unitOf } from '../../engine/scenario/field.ts';
import { withUnit } from './format.ts';

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
