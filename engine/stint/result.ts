/** What a run of a stint gives. SI and kelvin; the page converts for the eye. Typed arrays are transferred, not copied. */

import type { CornerColumns } from '../disc/columns.ts';
import type { Said } from '../said.ts';
import type { Scenario } from '../scenario/schema.ts';
import type {
  Ledgers,
  Damage,
  PedalRange,
  FluidCall,
  RangeUse,
  AirRow,
  PhaseAir,
  DuctCost,
  DuctPressures,
  WindowLimits,
  Axle,
  Restart,
  Soak,
  Pull,
} from './corner-facts.ts';

export type { CornerColumns };
export type * from './corner-facts.ts';

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

export interface CornerResult extends Ledgers {
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
  /** Empty when only the summary was wanted. */
  ranges: RangeUse[];
  air: AirRow[];
  /** By the place of a phase in the scenario's list; empty when only the summary was wanted. */
  phaseAir: PhaseAir[];
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
  said: Said;
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
