/** What a car ahead does to the drag of the one behind, and how that one leaves the wake. */

import { shareAcrossWake, wakeGrowth, type WakePlace } from './wake.ts';

/** Share of its own drag that a follower is spared right behind a car ahead. From memory, 0.15 to 0.35 [-] */
const TOW_STRENGTH = 0.25;
/** Gap over which the tow fades. From memory: puts 0.9 of the drag at two car lengths [m] */
const TOW_LENGTH_M = 2.4;
/** Half the span of speeds over which a car that pulls out leaves the wake. Smoothing, no source [m/s] */
const PULL_OUT_MPS = 4;

/**
 * Share of its own drag that a car still pays in the tow of a car ahead.
 *
 *     share = 1 − s g / [1 + (gap/2.4 m)²]^(1/3)
 *
 * @remarks
 * 0.75 close behind, 0.9 at 9 m, 1 far away. g is the wake's Gaussian at the car's offset: a car a metre and a half beside the
 * line keeps half of the tow at 9 m. The drag area of the car ahead only sets how wide that is, not how much is spared behind its
 * middle: a small car tows as much as a large one. Nor does the strength of the wake at the mouth change the tow. The sign below one car length depends on the leader's tail; here the tow is always a
 * gain. Zabat, Stabile, Frascaroli and Browand (SAE 940421) found a weak effect beyond one length.
 * Source: shape and values from memory; an editable default.
 *
 * @param place - gap, offset and drag area of the car ahead [m, m, m²]
 * @param strength - share of drag spared at no gap [-]
 * @returns share of the drag that remains [-]
 *
 * @example
 * towDragShare({ gap_m: 9 }) // => 0.899
 */
export function towDragShare(place: WakePlace, strength: number = TOW_STRENGTH): number {
  return 1 - (strength * shareAcrossWake(place)) / wakeGrowth(place.gap_m, TOW_LENGTH_M);
}

/**
 * How far a car that pulls out of line above some speed has left the wake.
 *
 *     share = x² (3 − 2x);  x = (V − V₀ + 4 m/s) / 8 m/s, held between 0 and 1
 *
 * @remarks
 * A driver pulls out in one move; the smooth step keeps drag and flow free of jumps, so that stints move smoothly
 * with the speed at which it happens.
 * Source: common practice, no source, for pulling out of line to cool; the step is numerical.
 *
 * @param speed_mps - speed now [m/s]
 * @param pullOut_mps - speed at which the car is half out of the wake [m/s]
 * @returns 0 in line, 1 beside the wake [-]
 *
 * @example
 * shareBesideWake(49, 50) // => 0.31640625
 * shareBesideWake(54, 50) // => 1
 */
export function shareBesideWake(speed_mps: number, pullOut_mps: number): number {
  const x = (speed_mps - pullOut_mps + PULL_OUT_MPS) / (2 * PULL_OUT_MPS);
  const held = Math.min(1, Math.max(0, x));
  return held * held * (3 - 2 * held);
}
