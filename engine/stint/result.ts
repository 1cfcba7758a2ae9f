/** What a run of a stint gives. SI and kelvin; the page converts for the eye. Typed arrays are transferred, not copied. */

import type { CornerColumns } from '../disc/columns.ts';
import type { PressureDrops } from '../duct/pressure-drops.ts';
import type { Scenario } from '../scenario/schema.ts';
import type { ValidRange } from '../valid-range.ts';

export type { CornerColumns };

export type LapKind = 'out' | 'push' | 'safety' | 'in';

/** One driven lap on the common clock. */
export interface Lap {
  /** Number of the lap, from 1 [-] */
  lap: number;
  kind: LapKind;
  /** Place of its phase in the result's list of phases [-] */
  phase: number;
  /** True for the push laps that are judged against the window. */
  counted: boolean;
  /** The weather of this lap; phases may change it. */
  wet: boolean;
  ambient_K: number;
  start_s: number;
  end_s: number;
  /** Samples [firstSample, lastSample] of the columns belong to this lap. */
  firstSample: number;
  lastSample: number;
}

/** What holds in a phase, beyond how its laps are driven. */
export interface PhaseFacts {
  /** The car ahead; null in clear air and for a standing car. */
  gap: {
    gap_m: number | null;
    gap_s: number | null;
    /** Share of the lap behind it [-] */
    share: number;
    /** Faster than this the car runs beside the wake; null stays in line [m/s] */
    pullOut_mps: number | null;
    tow: boolean;
  } | null;
  wet: boolean;
  ambient_K: number;
  /** Covered share of the mouths; a side's own where it has one [percent] */
  blanking_pct: Scenario['blanking_pct'];
  /** On board as the phase begins [kg] */
  fuel_kg: number;
  /** Share of the braking force at the front axle [-] */
  balance: number;
  driver: Scenario['driver'];
}

/** A stretch of the stint under one heading: a run of laps of one kind, or a standing car. */
export interface PhaseSpan extends PhaseFacts {
  kind: LapKind | 'stand';
  /** Place of the phase in the scenario's list; phases without laps are not in the result. */
  index: number;
  /** What this phase has set anew: the facts in which it differs from the phase before. Fuel that only burnt is not. */
  changed: (keyof PhaseFacts)[];
  /** First and last lap, or null for a standing car. */
  laps: [first: number, last: number] | null;
  start_s: number;
  end_s: number;
  brakeHeld: boolean;
}

/** Columns that all corners share, one entry a sample; sample 0 is the start of the stint. */
export interface Clock {
  time_s: Float64Array;
  /** Distance from the line within the lap [m] */
  distance_m: Float64Array;
  speed_mps: Float64Array;
  /** Power of all four brakes over the step that ends here [W] */
  brakePower_W: Float64Array;
}

/** A braking phase of one lap. */
export interface Stop {
  lap: number;
  /** Where it happens: the name of the corner it leads to, or a distance. */
  place: string;
  distance_m: number;
  start_s: number;
  end_s: number;
  hard: boolean;
  startFace_K: number;
  peakFace_K: number;
  /** Rubbed face over vane wall, or over the mid-plane of a solid disc [K] */
  largestDifference_K: number;
  pedal: StopPedal;
}

/** Pedal effort over that with the face in the middle of its window, for the same deceleration [-] */
export interface StopPedal {
  start: number;
  lowest: number;
  highest: number;
}

export interface LapSummary {
  lap: number;
  kind: LapKind;
  faceMin_K: number;
  faceMean_K: number;
  faceMax_K: number;
  /** Where the face peak of the lap is. */
  facePeakPlace: string;
  bulkMax_K: number;
  bulkMean_K: number;
  /** Lowest face temperature at the start of a hard stop; null without one. */
  coldestStop_K: number | null;
  coldestStopPlace: string | null;
  hardStops: number;
  belowBite: number;
  /** Braking, hard or not, with the face under bite. */
  belowBite_s: number;
  aboveFacePeak_s: number;
  aboveBulk_s: number;
  /** Rubbed face over vane wall, or over the mid-plane of a solid disc [K] */
  largestDifference_K: number;
  /** Past a hot or a cold limit by more than the window forgives, whether the lap counts or not. */
  tooHot: boolean;
  tooCold: boolean;
  /** Inside the window; null on laps that do not count. */
  in: boolean | null;
}

export type Limit = 'bite' | 'face peak' | 'bulk' | 'run';

/** The corner against its window over the counted laps. */
export interface Verdict {
  status: 'in' | 'hot' | 'cold' | 'both' | 'not judged';
  /** Why there is no verdict, in words; null when there is one. */
  reason: string | null;
  countedLaps: number;
  /** First counted lap that is out, or null. */
  firstLapOut: number | null;
  /** Smallest distance to the hot limits (face peak or bulk); negative is over [K] */
  hotMargin_K: number;
  hotLimit: Limit;
  hotPlace: string;
  hotLap: number;
  /** Smallest distance to the cold limits (bite or run); negative is under [K] */
  coldMargin_K: number;
  coldLimit: Limit;
  coldPlace: string;
  coldLap: number;
  facePeak_K: number;
  coldestStop_K: number | null;
  /** Face peak minus coldest counted stop [K] */
  swing_K: number | null;
}

/** Where the heat of one corner went over the stint (disc, bell, pads, plate, caliper, fluid) [J]; losses are positive. */
export interface Ledger {
  brakeHeat: number;
  /** Recomputed from the temperatures at start and end. */
  stored: number;
  vaneAir: number;
  faceAir: number;
  otherAir: number;
  radiation: number;
  conducted: number;
  residual: number;
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

export interface CornerResult {
  axle: Axle;
  /** "both" when left and right are equal and were computed once. */
  side: 'both' | 'left' | 'right';
  window: WindowLimits;
  /** null when only the summary was wanted */
  columns: CornerColumns | null;
  laps: LapSummary[];
  stops: Stop[];
  restarts: Restart[];
  /** After the last lap; null when the stint does not end standing. */
  soak: Soak | null;
  /** In each stop between laps of more than a minute. */
  stopSoaks: Soak[];
  verdict: Verdict;
  facePeak_K: number;
  bulkPeak_K: number;
  vanePeak_K: number;
  padPeak_K: number;
  caliperPeak_K: number;
  fluidPeak_K: number;
  fluidPeakAt_s: number;
  /** From the fluid's peak, standing included, to its own wet boiling point; negative is over [K] */
  fluidMargin_K: number;
  /** The same to the lowest wet boiling point of its class; null where it has none [K] */
  fluidClassMargin_K: number | null;
  fluidCall: FluidCall;
  damage: Damage;
  /** null where no lap that counts has a hard stop. */
  pedal: PedalRange | null;
  /** Highest of the wheelhouse's air, driving or standing. */
  wheelhousePeak_K: number;
  ledger_J: Ledger;
  /** Empty when only the summary was wanted. */
  ranges: RangeUse[];
  air: AirRow[];
  /** null without a duct */
  ductCost: DuctCost | null;
  pressures: DuctPressures | null;
}

/** The line of one kind of lap for the map and the speed trace. */
export interface Track {
  length_m: number;
  /** Outline in metres, or null where only a trace without positions is known. */
  outline: { distance_m: Float64Array; x_m: Float64Array; y_m: Float64Array } | null;
  corners: { name: string; at_m: number }[];
}

export interface Notice {
  kind: string;
  text: string;
}

export interface StintResult {
  name: string;
  laps: Lap[];
  phases: PhaseSpan[];
  clock: Clock;
  corners: CornerResult[];
  /** One for each axle whose sides differ. */
  pulls: Pull[];
  track: Track;
  /** Of the first push lap at full speed from line to line (or the first lap): time, top speed, heat of all four brakes. */
  lapTime_s: number;
  topSpeed_mps: number;
  brakeEnergyPerLap_J: number;
  notices: Notice[];
}
