/** How sure the answer is: what the draws of all unknowns give, and which unknown matters most. */
import type { Axle, CornerResult, Verdict } from '../stint/result.ts';
import type { Quantiles } from './quantiles.ts';
import type { Unknown } from './unknowns.ts';

export type { Quantiles, Unknown };

/** How many draws are made, and from which seed; the same seed gives the same draws. */
export interface Sample {
  draws: number;
  seed: number;
}

export interface LapSpread {
  lap: number;
  counted: boolean;
  facePeak_K: Quantiles;
  /** Of the draws in which the lap has a hard stop; null where none has. */
  coldestStop_K: Quantiles | null;
}

/** One draw as it would be driven: a stint that may come. */
export interface DrawnStint {
  status: Verdict['status'];
  /** Lap by lap; of the coldest start of a hard stop null where the lap has none [K] */
  facePeak_K: number[];
  coldestStop_K: (number | null)[];
}

/** How many draws keep all counted laps in, and how many do not and why. */
export type Count = Record<'in' | 'hot' | 'cold' | 'both' | 'notJudged', number>;

export const drawsIn = (count: Count): number =>
  count.in + count.hot + count.cold + count.both + count.notJudged;

/** What became of one corner in all draws. */
export interface CornerSpread {
  axle: Axle;
  side: CornerResult['side'];
  count: Count;
  laps: LapSpread[];
  /** Highest face peak and coldest start of a hard stop over the counted laps, one a draw. */
  hottest_K: number[];
  coldest_K: (number | null)[];
  /** The draws themselves, in the same order. */
  stints: DrawnStint[];
}

export interface Spread extends Sample {
  /** How many values of the scenario were drawn. */
  unknowns: number;
  corners: CornerSpread[];
}

/** What one end of one unknown's range changes, against the likely value, over the counted laps [K] */
export interface Shift {
  facePeak_K: number;
  coldestStop_K: number | null;
  hotMargin_K: number;
  coldMargin_K: number;
}

/** One unknown, moved alone. */
export interface Effect extends Unknown {
  atLow: Shift;
  atHigh: Shift;
  /** Half of what its range moves the margin that fails first [K] */
  moves_K: number;
}

export interface CornerSensitivity {
  axle: Axle;
  side: CornerResult['side'];
  /** Which margin is the smaller with all values as they are likely. */
  failsFirst: 'hot' | 'cold';
  /** All unknowns that this corner may feel, the largest first. */
  effects: Effect[];
  /** The unknown that is worth measuring first; null where none moves anything worth a word. */
  measureFirst: Effect | null;
}
