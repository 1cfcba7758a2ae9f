import { topSpeed } from '../../../engine/car/top-speed.ts';
import { speedProfile } from '../../../engine/circuit/speed-profile.ts';
import { heavyCar, perfectDriver, straight } from '../../support/driving.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ power = 0, efficiency = 0, dragArea = 0, rolling = 0, mass = 0, density = 0 }) => {
    const car = {
      ...heavyCar,
      power_W: power,
      efficiency,
      dragArea_m2: dragArea,
      rolling,
      mass_kg: mass,
    };
    const air = { density_kgpm3: density, powerFactor: 1, dragFactor: 1 };
    const lap = speedProfile({ layout: straight(5000), car, driver: perfectDriver, air });
    return { closed: topSpeed(car, air), driven: lap.speed_mps.at(-1) ?? NaN };
  });
