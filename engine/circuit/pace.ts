import {
  cornerSpeedSquared,
  dragFactorAt,
  dragForce,
  engineBrakingForce,
  frictionEllipse,
  loadPerMass,
  rollingForce,
  slopeForce,
} from '../car/longitudinal.ts';
import type { AirState, CarDynamics, Driver } from '../car/types.ts';
import type { Layout } from './layout.ts';

/**
 * Square of the speed below which no pass goes between the ends of a lap [m²/s²]: where tyres can neither
 * climb nor hold a slope, the car crawls instead of stopping for ever.
 */
export const CRAWL = 1;

/** Faster than any car here: stands for "no limit" in squares of speed. */
const UNLIMITED_MPS = 150;

/**
 * What this car, driver and air can do on each interval of a layout, as functions of speed squared, the
 * variable in which a constant acceleration is a straight line over distance.
 */
export interface Pace {
  /** highest speed squared at each node: cornering and the cap [m²/s²] */
  limit: Float64Array;
  /** full throttle [m/s²] */
  throttle(w: number, interval: number): number;
  /** neither pedal, in gear [m/s²] */
  coast(w: number, interval: number): number;
  /** all the braking grip that the driver uses [m/s²] */
  brake(w: number, interval: number): number;
}

export interface PaceRequest {
  layout: Layout;
  car: CarDynamics;
  driver: Driver;
  air: AirState;
  /** no faster than this anywhere, as behind a safety car */
  speedCap_mps?: number;
}

/**
 * Sets up a point-mass car on a layout: tyres within the driver's friction ellipse, power over speed, drag,
 * rolling resistance, slope and engine braking. Wheel inertia counts where the engine supplies the force or
 * takes it; where the tyres are the limit it does not, since brakes stop the wheels themselves.
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics, 1995, ch. 2, 3 and 9 (from memory).
 */
export function paceOf({ layout, car, driver, air, speedCap_mps = UNLIMITED_MPS }: PaceRequest): Pace {
  const m = car.mass_kg;
  const n = layout.distance_m.length - 1;
  const dragWith = (factor: number): number => dragForce(air.density_kgpm3, car.dragArea_m2 * factor, 1) / m;
  const inLine = dragWith(air.dragFactor);
  const lift = dragForce(air.density_kgpm3, car.downforceArea_m2, 1) / m;
  const rolling = rollingForce(car.rolling, m) / m;
  const power = (car.power_W * car.efficiency * air.powerFactor) / m;
  const frictionAcross = car.grip * driver.corneringShare;
  const frictionBraking = car.grip * driver.brakingShare;
  const frictionDriving = car.grip * driver.tractionShare;
  const drivenPerLoad = frictionDriving * drivenLoad(car, frictionDriving);

  const bend = new Float64Array(n);
  const climb = new Float64Array(n);
  const grip = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    bend[i] = Math.abs(layout.curvature_pm[i]! + layout.curvature_pm[i + 1]!) / 2;
    climb[i] = slopeForce(1, (layout.slope[i]! + layout.slope[i + 1]!) / 2);
    grip[i] = (layout.grip[i]! + layout.grip[i + 1]!) / 2;
  }
  const limit = layout.curvature_pm.map((curvature, i) => {
    const corner = cornerSpeedSquared(curvature, frictionAcross * layout.grip[i]!, lift);
    return Math.min(corner, speedCap_mps ** 2, UNLIMITED_MPS ** 2);
  });

  const drag = (w: number): number =>
    air.pullOut_mps === undefined ? inLine : dragWith(dragFactorAt(air, Math.sqrt(w)));
  const resistance = (w: number, i: number): number => drag(w) * w + rolling + climb[i]!;
  /** load per mass times local grip times what cornering leaves of it */
  const gripLeft = (w: number, i: number): number => {
    const load = loadPerMass(lift, Math.sqrt(w)) * grip[i]!;
    return load <= 0 ? 0 : load * frictionEllipse((w * bend[i]!) / (frictionAcross * load));
  };
  return {
    limit,
    throttle(w, i) {
      const tyres = gripLeft(w, i) * drivenPerLoad - resistance(w, i);
      const engine = (power / Math.sqrt(Math.max(w, CRAWL)) - resistance(w, i)) / car.rotationalFactor;
      return Math.min(tyres, engine);
    },
    coast(w, i) {
      const engine = engineBrakingForce(car.engineBraking_W, Math.sqrt(w)) / m;
      return -(engine + resistance(w, i)) / car.rotationalFactor;
    },
    brake: (w, i) => -(gripLeft(w, i) * frictionBraking + resistance(w, i)),
  };
}

/**
 * Load on the driven axle over the car's while it accelerates at the limit of that axle.
 *
 *     rear: (1 − w) / (1 − μ h/L),  front: w / (1 + μ h/L)
 *
 * @remarks
 * Downforce is shared like the weight; load transfer follows from the driving force itself. At most 1: the
 * other axle just off the ground.
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics, 1995, ch. 18 (from memory); moments about the
 * other axle's contact.
 *
 * @param car - driven axle, weight on the front, height of the centre of gravity, wheelbase count [-]
 * @param friction - friction used in driving [-]
 * @returns share of the car's load [-]
 *
 * @example
 * drivenLoad({ drivenAxle: 'rear', weightFront: 0.48, cgHeight_m: 0.46, wheelbase_m: 2.65 }, 1.2) // => 0.6568
 * drivenLoad({ drivenAxle: 'front', weightFront: 0.6, cgHeight_m: 0.46, wheelbase_m: 2.65 }, 1.2) // => 0.4966
 */
export function drivenLoad(
  car: Pick<CarDynamics, 'drivenAxle' | 'weightFront' | 'cgHeight_m' | 'wheelbase_m'>,
  friction: number,
): number {
  if (car.drivenAxle === 'both') return 1;
  const transfer = (friction * car.cgHeight_m) / car.wheelbase_m;
  if (car.drivenAxle === 'front') return car.weightFront / (1 + transfer);
  const rest = 1 - transfer;
  return rest > 1 - car.weightFront ? (1 - car.weightFront) / rest : 1;
}
