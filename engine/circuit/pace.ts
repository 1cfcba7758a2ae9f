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

/** What a layout is on each of its intervals: curvature without its side [1/m], pull of the slope [m/s²], local grip [-] */
interface Intervals {
  bend: Float64Array;
  climb: Float64Array;
  grip: Float64Array;
}

/** Every kind of lap of a circuit is driven on the same ones. */
const known = new WeakMap<Layout, Intervals>();

function intervalsOf(layout: Layout): Intervals {
  const found = known.get(layout);
  if (found) return found;
  const { curvature_pm, slope, grip } = layout;
  const middles = (column: Float64Array): Float64Array =>
    Float64Array.from({ length: column.length - 1 }, (_, i) => (column[i]! + column[i + 1]!) / 2);
  const made = {
    bend: middles(curvature_pm).map(Math.abs),
    climb: middles(slope).map((each) => slopeForce(1, each)),
    grip: middles(grip),
  };
  known.set(layout, made);
  return made;
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
  const weight = loadPerMass(lift, 0);
  const rolling = rollingForce(car.rolling, m) / m;
  const power = (car.power_W * car.efficiency * air.powerFactor) / m;
  const frictionAcross = car.grip * driver.corneringShare;
  const frictionBraking = car.grip * driver.brakingShare;
  const frictionDriving = car.grip * driver.tractionShare;
  const drivenPerLoad = frictionDriving * drivenLoad(car, frictionDriving);

  const { bend, climb, grip } = intervalsOf(layout);
  const limit = new Float64Array(n + 1);
  const cap = Math.min(speedCap_mps, UNLIMITED_MPS) ** 2;
  for (let i = 0; i <= n; i++)
    limit[i] = Math.min(
      cap,
      cornerSpeedSquared(layout.curvature_pm[i]!, frictionAcross * layout.grip[i]!, lift),
    );

  const { rotationalFactor, engineBraking_W } = car;
  const isInLine = air.pullOut_mps === undefined;
  const drag = (w: number): number => (isInLine ? inLine : dragWith(dragFactorAt(air, Math.sqrt(w))));
  const resistance = (w: number, i: number): number => drag(w) * w + rolling + climb[i]!;
  /** load per mass times local grip times what cornering leaves of it */
  const gripLeft = (w: number, i: number): number => {
    const load = (weight + lift * w) * grip[i]!;
    if (bend[i] === 0) return Math.max(0, load);
    return load <= 0 ? 0 : load * frictionEllipse((w * bend[i]!) / (frictionAcross * load));
  };
  return {
    limit,
    throttle(w, i) {
      const against = resistance(w, i);
      const tyres = gripLeft(w, i) * drivenPerLoad - against;
      const engine = (power / Math.sqrt(Math.max(w, CRAWL)) - against) / rotationalFactor;
      return Math.min(tyres, engine);
    },
    coast(w, i) {
      const engine = engineBrakingForce(engineBraking_W, Math.sqrt(w)) / m;
      return -(engine + resistance(w, i)) / rotationalFactor;
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
