/**
 * The room a brake stands in: the wheel around it, how much of its air is exchanged, and how warm the heat put into it makes
 * it. Driving, the car's speed carries the heat off and the air is a few kelvin warm; standing, only its own buoyancy does.
 */
import { heatCapacityAir } from '../air/dry-air.ts';
import { GRAVITY_MPS2 } from '../units.ts';
import type { ValidRange } from '../valid-range.ts';
import type { CornerSpec } from './corner-spec.ts';

/** Rim's radius over the tyre's. From memory [-] */
const RIM_RADIUS = 0.68;
/** Share of car speed at which air passes the open part of a rolling wheel. From memory, uncertain by half [-] */
const THROUGH_WHEEL = 0.58;
/** Discharge of openings at two heights. Source: ASHRAE Fundamentals, natural ventilation, 0.65 [-] */
const DISCHARGE = 0.65;
/** Mean height of half a disc over its straight side, 4/(3π) of its radius. Source: geometry [-] */
const HALF_DISC_HEIGHT = 4 / (3 * Math.PI);
/** Warmth at which a standing wheelhouse's density is taken: the flow is within 22 % from 35 to 130 K [K] */
const TYPICAL_RISE_K = 80;
/**
 * Share of the heat taken up by wheel, arch and plate that they give to the air inside; the rest goes outward and into tyre
 * and upright. From memory, 0.3 to 0.6; 0.4 puts 60 to 120 °C where practice has them behind a disc of 450 to 600 °C [-]
 */
const GIVEN_INWARD = 0.4;
/** Newton's steps end with one shorter than this, and after so many at most. [K] */
const ENOUGH_K = 0.01;
const MOST_STEPS = 8;
/** Keeps the draught smooth where the wheelhouse is as cold as the day [K²] */
const ROUNDING_K2 = 1;

type Wheel = Pick<CornerSpec['wheel'], 'openShare' | 'loadedRadius_m'>;

/** To be compared with the warmth of the wheelhouse while the car stands. */
export const wheelhouseRange: ValidRange = {
  law: 'warmth of a standing wheelhouse',
  quantity: 'warmth of its air over ambient',
  unit: 'K',
  low: 0,
  high: 130,
  source: 'density taken at a warmth of 80 K; from memory',
};

/**
 * Inner radius of the wheel.
 *
 *     r = 0.68 r_tyre
 *
 * @remarks
 * Source: from memory, 0.62 to 0.72.
 *
 * @param spec - the corner; only its wheel is read
 * @returns radius [m]
 *
 * @example
 * wheelRadius({ wheel: { loadedRadius_m: 0.345 } }) // => 0.2346
 */
export const wheelRadius = ({ wheel }: { wheel: Pick<Wheel, 'loadedRadius_m'> }): number =>
  RIM_RADIUS * wheel.loadedRadius_m;

/** Open area of the wheel [m²] */
const openArea = (wheel: Wheel): number => wheel.openShare * Math.PI * wheelRadius({ wheel }) ** 2;

/**
 * Heat capacity of the air that the car's speed drives through a wheel, and of what the duct brings.
 *
 *     C = c_p (ρ · 0.58 V · o π R² + ṁ_duct)
 *
 * @remarks
 * Open shares of 0.1 to 0.8. The share of car speed is uncertain by half; driving, the wheelhouse is 5 to 20 K warm, so little
 * follows from it. What leaves vanes and leak ends in the wheelhouse too. Source: conservation of energy; the share is from
 * memory.
 *
 * @param wheel - its open share and loaded radius
 * @param air - speed of the car [m/s], what the duct takes in [kg/s], density [kg/m³] and temperature of the air [K]
 * @returns heat capacity rate [W/K]
 *
 * @example
 * capacityDriven({ openShare: 0.35, loadedRadius_m: 0.345 },
 *   { speed_mps: 50, duct_kgps: 0, density_kgpm3: 1.16, air_K: 299 }) // => 2049.99
 */
export function capacityDriven(
  wheel: Wheel,
  air: { speed_mps: number; duct_kgps: number; density_kgpm3: number; air_K: number },
): number {
  const through_kgps = air.density_kgpm3 * THROUGH_WHEEL * air.speed_mps * openArea(wheel);
  return heatCapacityAir(air.air_K) * (through_kgps + Math.max(0, air.duct_kgps));
}

/**
 * Heat capacity of the air that buoyancy drives through the wheel of a standing car, per root of its warmth.
 *
 *     C = k √ΔT,  k = ρ c_p (T₀/T) C_d A √(2 g H / T);  A = ½ o π R²,  H = 4R/(3π),  C_d = 0.65
 *
 * @remarks
 * Hot air leaves through the upper half of the wheel, cold air comes in through the lower; the hub is the level without a
 * difference of pressure. T is taken 80 K above ambient. Left out: the way in from under the car, and wind, which both cool.
 * Source: stack flow Q = C_d A √(2 g ΔH (T − T₀)/T), ASHRAE Fundamentals 1997, chapter 25, equation 37 (read in a copy).
 *
 * @param wheel - its open share and loaded radius
 * @param air - density [kg/m³] and temperature of the day's air [K]
 * @returns heat capacity rate over the root of the warmth [W/K^1.5]
 *
 * @example
 * capacityBuoyant({ openShare: 0.35, loadedRadius_m: 0.345 }, { density_kgpm3: 1.16, air_K: 299 }) // => 1.3010
 */
export function capacityBuoyant(wheel: Wheel, air: { density_kgpm3: number; air_K: number }): number {
  const inside_K = air.air_K + TYPICAL_RISE_K;
  const height_m = HALF_DISC_HEIGHT * wheelRadius({ wheel });
  const perVolume = air.density_kgpm3 * heatCapacityAir(air.air_K) * (air.air_K / inside_K);
  return perVolume * DISCHARGE * (openArea(wheel) / 2) * Math.sqrt((2 * GRAVITY_MPS2 * height_m) / inside_K);
}

/**
 * Share of a corner's radiation that ends in the air of its wheelhouse.
 *
 *     s = 0.4 (1 − o/2)
 *
 * @remarks
 * Half of the radiation goes outboard, where the open share of the wheel lets it out; wheel, arch, plate and upright take up
 * the rest and give two fifths of that to the air inside. At once: a wheel of 10 kg follows in ten minutes, so the first minutes of a
 * stop come out too warm. Source: geometry; what goes inward is from memory.
 *
 * @param openShare - open share of the wheel, 0 to 1 [-]
 * @returns share of the radiated heat [-]
 *
 * @example
 * shareRadiationKept(0.35) // => 0.33
 */
export const shareRadiationKept = (openShare: number): number => GIVEN_INWARD * (1 - openShare / 2);

/**
 * How much warmer than the day the air of the wheelhouse is.
 *
 *     ΔT (C + G) = Q,  C = √(C_V² + k² ΔT)
 *
 * @remarks
 * Q is what air as cold as the day would be given; G ΔT is what its warmth holds back. The pressures of speed and buoyancy add,
 * so the flows add as squares. Newton's method from a guess that is right when driving, so that one step is enough there; its
 * last step is shorter than 0.01 K, which leaves some 1e-6 K. Air colder than the day falls out as hot air rises.
 * Source: conservation of energy; wind and stack together, ASHRAE Fundamentals, natural ventilation (from memory).
 *
 * @param heat_W - Q, heat offered to the air [W]
 * @param held_WpK - G, conductance by which warmth holds heat back [W/K]
 * @param driven_WpK - C_V, capacity of the flow by car speed [W/K]
 * @param buoyant - k, capacity of the flow by buoyancy; C_V and k not both 0 [W/K^1.5]
 * @returns warmth over ambient [K]
 *
 * @example
 * riseWheelhouse(1200, 3, 0, 1.3) // => 81.450
 */
export function riseWheelhouse(
  heat_W: number,
  held_WpK: number,
  driven_WpK: number,
  buoyant: number,
): number {
  const driven2 = driven_WpK * driven_WpK;
  const buoyant2 = buoyant * buoyant;
  // the first guess has the draught of a wheelhouse 64 K warm
  let rise = heat_W / (held_WpK + Math.sqrt(driven2 + 64 * buoyant2));
  for (let step = 0, change = 1; step < MOST_STEPS && Math.abs(change) > ENOUGH_K; step++) {
    const warm = Math.sqrt(rise * rise + ROUNDING_K2);
    const carried = Math.sqrt(driven2 + buoyant2 * warm);
    const excess = rise * (carried + held_WpK) - heat_W;
    const growth = carried + held_WpK + (buoyant2 * rise * rise) / (2 * carried * warm);
    change = excess / growth;
    rise -= change;
  }
  return rise;
}
