/** The room a brake stands in: the wheel around it. */
import type { CornerSpec } from './corner-spec.ts';

/** Rim's radius over the tyre's. From memory [-] */
const RIM_RADIUS = 0.68;

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
export const wheelRadius = ({ wheel }: CornerSpec): number => RIM_RADIUS * wheel.loadedRadius_m;
