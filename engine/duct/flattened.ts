/** A hose squeezed flat over a part of its length, where room is short. */

import type { ValidRange } from '../valid-range.ts';
import { lossFriction } from './hose.ts';
import { lossContraction, lossExpansion } from './loss-area-change.ts';

/** To be compared with the clearance over the hose's diameter, where it is below 1. */
export const flattenedRange: ValidRange = {
  law: 'flattened hose',
  quantity: 'clearance over the hose diameter',
  unit: '',
  low: 0.3,
  high: 1,
  source: 'the flat-sided section is exact geometry; that a helix keeps it below 0.3 is not known',
};

/**
 * Area, and hydraulic diameter, of a round hose pressed to a flat-sided section, as a share of the round one's.
 *
 *     A/A₀ = D_h/D = 2β − β²
 *
 * @remarks
 * A stadium of minor axis βD with the round hose's perimeter: the wall bends but does not stretch. Exact for it; an
 * ellipse of the same perimeter and height has up to 7 % less area at β = 0.5. β from 0.3: below, a wire helix folds.
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
 * Loss coefficient of the flattened part of a hose, referred to the dynamic pressure in the round hose.
 *
 *     K = [ 0.5 (1 − s)^0.75 + f L / (s D) + (1 − s)² ] / s²,   s = 2β − β²
 *
 * @remarks
 * In: a contraction; along it: friction on the flat section's hydraulic diameter; out: an expansion. A hose changes its
 * shape over a diameter or so, not at once, so both changes of area are at most this. The friction factor is the round
 * hose's, though the same helix is a little rougher for the flat section. A round one gives its wall friction alone.
 * Source: losses in series, Idelchik, Handbook of Hydraulic Resistance, diagrams 4-1 and 4-9; Darcy-Weisbach.
 *
 * @param flattened - minor axis over round diameter, above 0 and at most 1 [-]
 * @param friction - Darcy friction factor of the hose as fitted [-]
 * @param lengthRatio - length of the flat part over the round hose's diameter [-]
 * @returns loss coefficient [-]
 *
 * @example
 * lossFlattened(0.5, 0.06, 0.2 / 0.076) // => 0.79965
 */
export function lossFlattened(flattened: number, friction: number, lengthRatio: number): number {
  const s = shareFlattened(flattened);
  return (lossContraction(s) + lossFriction(friction, lengthRatio, s) + lossExpansion(s)) / s ** 2;
}
