import { speedProfile } from '../../../engine/circuit/speed-profile.ts';
import { layoutCircuit } from '../../../engine/circuit/layout.ts';
import { heavyCar, perfectDriver } from '../../support/driving.ts';
import type { Compute, Row } from '../gate.ts';

export const compute: Compute = (rows) => rows.map((row) => ({ speed: roundTheCircle(row) }));

/** The whole profile on a circle. No drag: holding a speed against it takes some of the grip. */
function roundTheCircle({ grip = 1, radius = 1, mass = 1, density = 1, downforceArea = 0 }: Row): number {
  const circle = { length_m: 2 * Math.PI * radius, radius_m: radius, turn: 'left', slope_pct: 0 } as const;
  const layout = layoutCircuit({ id: '', name: '', purpose: '', segments: [circle] });
  const car = {
    ...heavyCar,
    grip,
    mass_kg: mass,
    downforceArea_m2: downforceArea,
    dragArea_m2: 0,
    rolling: 0,
  };
  const air = { density_kgpm3: density, powerFactor: 1, dragFactor: 1 };
  return speedProfile({ layout, car, driver: perfectDriver, air }).speed_mps[0] ?? NaN;
}
