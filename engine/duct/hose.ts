/** The flexible hose: not fully stretched, and squeezed flat where room is short. */

/**
 * Growth of friction with compression. From memory, 10 to 20: measured factors are about 4 at a moderate compression
 * and up to 10 (Abushakra, Walker and Sherman, flexible duct of 150 to 250 mm); a rule of thumb has half of that [-]
 */
const COMPRESSION_SLOPE = 12;

/**
 * Friction factor of a wire-helix hose that is not fully stretched.
 *
 *     f = f₀ (1 + a c)
 *
 * @remarks
 * c is the share of its stretched length by which the hose is shortened, 0 to about 0.45.
 * Source: linear form and slope from memory; that the factor grows so much is from Abushakra, Walker and Sherman,
 * Lawrence Berkeley National Laboratory. To be set by a measured flow.
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
 * Area, and hydraulic diameter, of a round hose pressed to a flat-sided section, as a share of the round one's.
 *
 *     A/A₀ = D_h/D = 2β − β²
 *
 * @remarks
 * A stadium of minor axis βD with the round hose's perimeter: the wall bends but does not stretch. Exact for it; an
 * ellipse of the same perimeter and height has up to 7 % less area at β = 0.5.
 * Source: geometry of the stadium.
 *
 * @param flattened - minor axis over round diameter, 0 to 1 [-]
 * @returns share of the round hose's area, and of its diameter [-]
 *
 * @example
 * shareFlattened(0.6) // => 0.84
 */
export function shareFlattened(flattened: number): number {
  return flattened * (2 - flattened);
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
