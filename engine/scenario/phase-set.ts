/** What a phase sets, as it takes hold. */
import type { Changes } from './changes.ts';
import type { Scenario } from './schema.ts';

const SIDES = ['front_left', 'front_right', 'rear_left', 'rear_right'] as const;

/** What a phase says of an axle's blanking holds for sides that have their own too, unless it says something else of them. */
export function withSides({ blanking_pct }: Scenario, set: Changes): Changes {
  const own = SIDES.filter((side) => blanking_pct[side] !== undefined);
  const along = own.flatMap((side) => {
    const whole = set[`blanking_pct.${side.split('_')[0]}`];
    return whole === undefined ? [] : [[`blanking_pct.${side}`, whole] as const];
  });
  return { ...Object.fromEntries(along), ...set };
}
