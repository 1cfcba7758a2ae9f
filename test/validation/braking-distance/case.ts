import { speedProfile } from '../../../engine/circuit/speed-profile.ts';
import { brakingFrom, heavyCar, perfectDriver, straight } from '../../support/driving.ts';
import type { Compute, Row } from '../gate.ts';

export const compute: Compute = (rows) => rows.map(stop);

/** Held at the first speed until the last moment, then down to the second at the end of a straight. */
function stop({
  grip = 1,
  mass = 1,
  density = 1,
  dragArea = 0,
  downforceArea = 0,
  from = 1,
  to = 0,
}: Row): Row {
  const car = {
    ...heavyCar,
    grip,
    mass_kg: mass,
    dragArea_m2: dragArea,
    downforceArea_m2: downforceArea,
    rolling: 0,
    power_W: 2e6,
  };
  const air = { density_kgpm3: density, powerFactor: 1, dragFactor: 1 };
  const run = { layout: straight(600), car, driver: perfectDriver, air };
  const profile = speedProfile({ ...run, entry_mps: from, speedCap_mps: from, exit_mps: to });
  const { distance_m, time_s } = brakingFrom(profile, from);
  return { distance: distance_m, time: time_s, hardDistance: distance_m, hardTime: time_s };
}
