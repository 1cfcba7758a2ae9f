/** Mach and Reynolds numbers in a duct, for the ranges of the laws that know neither. */

import { viscosityAir } from '../air/dry-air.ts';
import { GAS_CONSTANT_AIR } from '../air/standard-atmosphere.ts';
import type { ValidRange } from '../valid-range.ts';
import type { AirPathGeometry } from './air-path.ts';
import { shareFlattened } from './flattened.ts';

/** Heat capacities of air at constant pressure over that at constant volume. Source: U.S. Standard Atmosphere, 1976 [-] */
const HEAT_CAPACITY_RATIO = 1.4;

/** To be compared with the highest Mach number of mouth, hose and flattened part at top speed. */
export const ductMachRange: ValidRange = {
  law: 'duct flow of constant density',
  quantity: 'highest Mach number in mouth and hose',
  unit: '',
  low: 0,
  high: 0.3,
  source: 'density then moves by less than 5 %: isentropic flow, in texts on gas dynamics',
};

/**
 * Mach number of a flow through an area.
 *
 *     M = ṁ / (ρ A √(1.4 R T))
 *
 * @remarks
 * With the density of the air ahead: up to 5 % low at M 0.3.
 * Source: speed of sound of an ideal gas.
 *
 * @param kgps - mass flow, 0 or more [kg/s]
 * @param area_m2 - area, above 0 [m²]
 * @param air - density [kg/m³] and temperature [K]
 * @returns Mach number [-]
 *
 * @example
 * machThrough(0.1, 0.0045, { density_kgpm3: 1.184, air_K: 298.15 }) // => 0.0542217
 */
export function machThrough(
  kgps: number,
  area_m2: number,
  air: { density_kgpm3: number; air_K: number },
): number {
  const sound_mps = Math.sqrt(HEAT_CAPACITY_RATIO * GAS_CONSTANT_AIR * air.air_K);
  return kgps / (air.density_kgpm3 * area_m2 * sound_mps);
}

/**
 * Reynolds number in the hoses.
 *
 *     Re = 4 ṁ / (N π D μ)
 *
 * @remarks
 * A flattened part of the same wall has the same: its flow over its perimeter.
 * Source: definition.
 *
 * @param geometry - the air path; its duct must exist
 * @param duct_kgps - flow of all hoses, 0 or more [kg/s]
 * @param air_K - temperature of the air [K]
 * @returns Reynolds number [-]
 *
 * @example
 * reynoldsHose({ hoses: 2, hoseDiameter_m: 0.076 }, 0.2, 298.15) // => 91186.8
 */
export function reynoldsHose(
  { hoses, hoseDiameter_m }: AirPathGeometry,
  duct_kgps: number,
  air_K: number,
): number {
  return (4 * duct_kgps) / (hoses * Math.PI * hoseDiameter_m * viscosityAir(air_K));
}

/**
 * Narrowest area that the air passes on its way to the disc: what is open of the mouth, or the hoses where they are flattest.
 *
 *     A = min(f A_mouth, N A_hose s)
 *
 * @remarks
 * Where the Mach number is highest. Source: continuity.
 *
 * @param geometry - the air path; its duct must exist
 * @param openFraction - share of the mouth's area that is not taped, 0 to 1 [-]
 * @returns area [m²]
 *
 * @example
 * 1e4 * narrowestArea({ mouthArea_m2: 0.011, hoses: 2, hoseDiameter_m: 0.076, pinch: null }, 1) // => 90.729
 */
export function narrowestArea(geometry: AirPathGeometry, openFraction: number): number {
  const { mouthArea_m2, hoses, hoseDiameter_m, pinch } = geometry;
  const round_m2 = hoses * (Math.PI / 4) * hoseDiameter_m ** 2;
  return Math.min(openFraction * mouthArea_m2, round_m2 * shareFlattened(pinch?.flattened ?? 1));
}
