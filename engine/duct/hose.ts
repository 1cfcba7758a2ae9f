/**
 * The flexible hose: the friction of its wall, and what it grows by where the hose is not fully stretched.
 *
 * Why the friction factor is a number and not a law of speed: a wire helix is as rough as ε/D of 0.01 to 0.05, and from
 * Re 3e4 to 3e5 Colebrook's factor there is 0.038 to 0.073 and moves by less than a tenth (tested): fully rough flow.
 */

import type { ValidRange } from '../valid-range.ts';

/**
 * Growth of friction with compression. From memory, 10 to 20: measured pressure drops grow by about 4 at a moderate
 * compression and up to 10 beyond (Abushakra, Walker and Sherman, Compression effects on pressure loss in flexible HVAC
 * ducts, Lawrence Berkeley National Laboratory; 150, 200 and 250 mm), by more than 10 (Weaver and Culp, Texas A&M; up to
 * 45 %), and by more than 4 above 4 % (Cantrill, Texas A&M, 2013; 300 to 400 mm). 12 gives 4 at 25 % and 6.4 at 45 % [-]
 */
const COMPRESSION_SLOPE = 12;

/** To be compared with the hose's compression, in percent. */
export const compressionRange: ValidRange = {
  law: 'friction of a compressed hose',
  quantity: 'shortening of the hose',
  unit: '%',
  low: 0,
  high: 45,
  source: 'Weaver and Culp, Texas A&M: measured from stretched to 45 %, on hoses of 150 to 250 mm',
};

/** To be compared with the Reynolds number in the hose wherever the car is faster than 50 km/h. */
export const hoseReynoldsRange: ValidRange = {
  law: 'friction of a hose that does not depend on speed',
  quantity: 'Reynolds number in the hose',
  unit: '',
  low: 1e4,
  high: 1e6,
  source: 'Colebrook 1939 at a roughness of 0.01 to 0.05; area changes: Idelchik, Re above 1e4',
};

/**
 * Friction factor of a wire-helix hose that is not fully stretched.
 *
 *     f = f₀ (1 + a c)
 *
 * @remarks
 * c is the share of its stretched length by which the hose is shortened, 0 to 0.45.
 * Source: linear form and slope from memory; that the factor grows so much is from Abushakra, Walker and Sherman,
 * Lawrence Berkeley National Laboratory, and Weaver and Culp, Texas A&M, on larger hoses. To be set by a measured flow.
 *
 * @param stretched - Darcy friction factor of the hose pulled straight, 0.035 to 0.07 [-]
 * @param compression - shortening over stretched length, 0 to 0.45 [-]
 * @param slope - growth with compression, 10 to 20 [-]
 * @returns Darcy friction factor [-]
 *
 * @example
 * frictionCompressedHose(0.05, 0.15) // => 0.14
 */
export function frictionCompressedHose(
  stretched: number,
  compression: number,
  slope: number = COMPRESSION_SLOPE,
): number {
  return stretched * (1 + slope * compression);
}

/**
 * Loss coefficient of wall friction along a hose.
 *
 *     K = f L / D_h
 *
 * @remarks
 * Fully developed flow; short hoses pay a little more at their start.
 * Source: Darcy-Weisbach, in any text on pipe flow.
 *
 * @param friction - Darcy friction factor [-]
 * @param length_m - length along the centre line [m]
 * @param hydraulicDiameter_m - hydraulic diameter [m]
 * @returns loss coefficient on the dynamic pressure in the hose [-]
 *
 * @example
 * lossFriction(0.05, 1.4, 0.076) // => 0.92105
 */
export function lossFriction(friction: number, length_m: number, hydraulicDiameter_m: number): number {
  return (friction * length_m) / hydraulicDiameter_m;
}
