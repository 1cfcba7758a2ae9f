import { axleShare, brakeHeat } from '../../../engine/car/brake-heat.ts';
import { GRAVITY_MPS2 } from '../../../engine/units.ts';
import { heavyCar } from '../../support/driving.ts';
import type { Compute, Row } from '../gate.ts';

export const compute: Compute = (rows) => rows.map(stop);

/** A stop at constant deceleration in equal steps of time; the engine is out of gear. */
function stop(row: Row): Row {
  const { mass = 0, factor = 0, from = 0, to = 0, decelerationG = 0, density = 0, dragArea = 0 } = row;
  const { rolling = 0, slip = 0, balance = 0, discShare = 0, discMass = 0, discHeat = 0 } = row;
  const decel = decelerationG * GRAVITY_MPS2;
  const duration_s = (from - to) / decel;
  const steps = 2000;
  const time_s = Float64Array.from({ length: steps + 1 }, (_, i) => (i * duration_s) / steps);
  const motion = {
    time_s,
    speed_mps: time_s.map((t) => from - decel * t),
    distance_m: time_s.map((t) => from * t - (decel * t * t) / 2),
    accel_mps2: time_s.map(() => -decel),
    slope: new Float64Array(steps + 1),
  };
  const car = {
    ...heavyCar,
    mass_kg: mass,
    rotationalFactor: factor,
    dragArea_m2: dragArea,
    rolling,
    engineBraking_W: 0,
  };
  const air = { density_kgpm3: density, powerFactor: 1, dragFactor: 1 };
  const atBrakes = brakeHeat(motion, { ...car, slip: 0 }, air).total_J;
  const oneDisc = (brakeHeat(motion, { ...car, slip }, air).total_J * axleShare(balance, 'front')) / 2;
  const intoDisc = oneDisc * discShare;
  return {
    distance: motion.distance_m[steps]!,
    time: duration_s,
    energyAtBrakes: atBrakes,
    energyInDisc: intoDisc,
    discRise: intoDisc / (discMass * discHeat),
  };
}
