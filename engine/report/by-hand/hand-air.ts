/** The air of one corner at one speed, as the calculations by hand take it. */
import type { Day } from '../../stint/day.ts';

export interface HandAir {
  speed_mps: number;
  /** Bulk of the disc over the lap, at which its surfaces are taken [K] */
  disc_K: number;
  day: Day;
  /** The day's, warmer behind a car [K] */
  air_K: number;
  openFraction: number;
  /** Dynamic pressure at the mouth over that of clear air, the mean over the time behind a car and clear of it [-] */
  qRatio: number;
  /** Share of the time at this speed behind the car ahead [-] */
  behind: number;
  duct_kgps: number;
  vane_kgps: number;
  leak_kgps: number;
  cooling: number;
  /** On every surface's emissivity, and in the corner's spec already [-] */
  emissivity: number;
  /** Share of the lap with the pads pressed [-] */
  pressedShare: number;
}
