/** What is told of one corner beside its temperatures: books, wear, pedal, air, restarts, soak. SI and kelvin. */
import type { PressureDrops } from '../duct/pressure-drops.ts';
import type { ValidRange } from '../valid-range.ts';

/** Where the heat of one corner went over a stretch of the stint (disc, bell, pads, plate, caliper, fluid) [J]; losses are positive. */
export interface Ledger {
  brakeHeat: number;
  /** What it holds more at the end than at the start, from its temperatures then. */
  stored: number;
  vaneAir: number;
  faceAir: number;
  otherAir: number;
  radiation: number;
  conducted: number;
  residual: number;
}

/** The laps' and the stands' add up to the stint's. */
export interface Ledgers {
  ledger_J: Ledger;
  /** One a lap, in order. */
  lapLedgers_J: Ledger[];
  /** Of all standing together. */
  standLedger_J: Ledger;
}

/** What wears a disc beyond its temperatures, as `damage.ts` defines it. */
export interface Damage {
  /** Of the whole stint: rubbed face over vane wall, or over the mid-plane of a solid disc, and where [K] */
  largestDifference_K: number;
  place: string;
  lap: number;
  /** Braking phases of the whole stint whose difference is above 200 K, of how many [-] */
  stopsAbove200: number;
  stops: number;
  /** Over the laps that count, or over all where none does. */
  aboveFacePeak_s: number;
  /** Braking with the face under bite. */
  belowBite_s: number;
  aboveBulk_s: number;
}

/** Extremes of the pedal effort in the hard stops of the laps that count (of all where none does): 1.18 is 18 % heavier [-] */
export interface PedalRange {
  /** Face in the middle between bite and face peak, where the effort is 1. */
  middle_K: number;
  highest: number;
  place: string;
  lap: number;
  lowest: number;
  lowestPlace: string;
  lowestLap: number;
}

/** What the fluid's margin to its wet boiling point calls for in practice. */
export type FluidCall = 'comfortable' | 'nothing' | 'act' | 'do not run';

/** A law of the model with where it holds, and what a run used of it. */
export interface RangeUse extends ValidRange {
  from: number;
  to: number;
  /** The run left the range. */
  left: boolean;
}

/** The air of one corner in clear air at one speed. */
export interface AirRow {
  speed_mps: number;
  ductFlow_kgps: number;
  vaneFlow_kgps: number;
  /** positive: out of the plenum; negative: warm wheelhouse air drawn in */
  leakFlow_kgps: number;
  plenum_Pa: number;
  /** What the air taken by this corner costs the car at most: all of its momentum, and that times speed. */
  drag_N: number;
  dragPower_W: number;
}

/** The air of one corner over a grid of speeds from 0 on: between two of them flows are in proportion. */
export interface AirColumns {
  speedStep_mps: number;
  duct_kgps: Float64Array;
  vane_kgps: Float64Array;
  /** Positive: out of the plenum; negative: warm wheelhouse air drawn in. */
  leak_kgps: Float64Array;
  plenum_Pa: Float64Array;
  /** Dynamic pressure of the air met: all there is to have. */
  ram_Pa: Float64Array;
}

/** The air of one corner in a phase, blanked as it is there. */
export interface PhaseAir {
  clear: AirColumns;
  /** Behind the car ahead, the mean by time at each speed where that is not all of the lap; null in clear air. */
  traffic: AirColumns | null;
}

/** What the air taken by one corner costs the car at most, at its top speed on a level road in clear air. */
export interface DuctCost {
  topSpeed_mps: number;
  drag_N: number;
  power_W: number;
  /** Of one corner; both corners of an axle cost twice that (`axleDuctCost`). */
  topSpeedLoss_mps: number;
}

/** Where the pressure along a corner's duct is lost, in clear air at one speed; the shares hold at any. */
export interface DuctPressures extends PressureDrops {
  speed_mps: number;
}

export interface WindowLimits {
  bite_K: number;
  facePeak_K: number;
  bulk_K: number;
  run_K: number | null;
}

export type Axle = 'front' | 'rear';

/** The discs come back from slow or standing: what the driver meets until they are warm, as `restarts.ts` defines it. */
export interface Restart {
  /** First lap at pace. */
  lap: number;
  after: 'start' | 'safety car' | 'stop';
  /** Face at the start of the first hard stop. */
  firstStop_K: number;
  firstStopPlace: string;
  firstStopLap: number;
  /** How far that is under bite; 0 at or above it [K] */
  underBite_K: number;
  /** Braking phases, hard or not, before the disc is warm; null if it never is before it is slow again [-] */
  brakesToWarm: number | null;
  /** Whole laps driven before the lap on which it is warm [-] */
  lapsToWarm: number | null;
  /** The hard stop from which it is warm. */
  warmLap: number | null;
  warmPlace: string | null;
}

/** What a part does while the car stands. */
export interface SoakRise {
  start_K: number;
  peak_K: number;
  rise_K: number;
  /** From the moment the car stands; 0 where the part only cools [s] */
  peakAfter_s: number;
}

/** A standing car: caliper and fluid go on rising while the disc cools. */
export interface Soak {
  /** The lap it follows. */
  lap: number;
  standing_s: number;
  brakeHeld: boolean;
  caliper: SoakRise;
  fluid: SoakRise;
  /** What the peak leaves to the caliper's caution and to the fluid's wet boiling point; negative is over [K] */
  caliperMargin_K: number;
  fluidMargin_K: number;
  /** Bulk of the disc. */
  discStart_K: number;
  discEnd_K: number;
  /** What it loses in the first minute; null where the car stands for less [K] */
  discFirstMinute_K: number | null;
}

/** The largest difference between the two sides of an axle, as `pulls.ts` defines it. */
export interface Pull {
  axle: Axle;
  lap: number;
  at: 'stop start' | 'face peak';
  place: string;
  hotter: 'left' | 'right';
  by_K: number;
  /** What so much calls for in practice. */
  calls: 'nothing' | 'caution' | 'fault';
}
