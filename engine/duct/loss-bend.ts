/** Bends of a hose. */

import type { ValidRange } from '../valid-range.ts';

/** To be compared with the radius of every bend over the hose's diameter. */
export const bendRange: ValidRange = {
  law: 'loss of a bend',
  quantity: 'bend radius over hose diameter',
  unit: '',
  low: 0.5,
  high: 5,
  source: 'Rennels and Hudson 2012, from 0.5; four authors agree within 15 % from 1 to 5',
};

/**
 * Loss coefficient of a smooth bend, its own wall friction included.
 *
 *     K = f α r/D + (0.10 + 2.4 f) sin(α/2) + 6.6 f (√sin(α/2) + sin(α/2)) / (r/D)^(4α/π)
 *
 * @remarks
 * For 0 < α ≤ π and r/D ≥ 0.5. Fitted to smooth pipe; a hose's own friction factor passed in scales it, which is
 * outside what the authors measured. Four authors spread by 15 % at r/D 1 to 3.
 * Source: Rennels and Hudson, Pipe Flow: A Practical and Comprehensive Guide, 2012, chapter 15.
 *
 * @param angle_rad - angle turned, above 0 and at most π [rad]
 * @param radiusRatio - radius of the centre line over the diameter, at least 0.5 [-]
 * @param friction - Darcy friction factor of the wall [-]
 * @returns loss coefficient on the dynamic pressure in the bend [-]
 *
 * @example
 * lossBendRennels(1.5708, 1.5, 0.018) // => 0.2254
 */
export function lossBendRennels(angle_rad: number, radiusRatio: number, friction: number): number {
  const s = Math.sin(angle_rad / 2);
  const wall = friction * angle_rad * radiusRatio;
  const turn = (0.1 + 2.4 * friction) * s;
  const secondary = (6.6 * friction * (Math.sqrt(s) + s)) / radiusRatio ** ((4 * angle_rad) / Math.PI);
  return wall + turn + secondary;
}
