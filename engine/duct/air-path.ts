/** What the air of one corner passes on its way: the words shared by the files of this folder. */

export interface Bend {
  readonly angle_rad: number;
  /** Radius of the centre line over the hose's diameter, at least 0.5. */
  readonly radiusRatio: number;
}

/** Where a hose is squeezed flat. */
export interface HosePinch {
  /** Minor axis of the squeezed hose over its diameter, above 0 and below 1. */
  readonly flattened: number;
  readonly length_m: number;
}

/** The passages of a vented disc. */
export interface VanePath {
  /** Narrowest area of all passages together, at their inner radius. */
  readonly flowArea_m2: number;
  /** Loss on the dynamic pressure in that area: turn and incidence at entry, friction, exit. About 4. */
  readonly loss: number;
  readonly outerRadius_m: number;
  readonly innerRadius_m: number;
  /** Share of the solid-body pressure rise that helps the flow, 0.3 to 0.7. */
  readonly pumping: number;
}

export interface AirPathGeometry {
  /** Full area of the mouth; 0 where the corner has no duct, and then no other field of the duct counts. */
  readonly mouthArea_m2: number;
  /** Plate thickness over the holes' diameter of a perforated blank; left out where a sharp edge blanks the mouth. */
  readonly blankDepth?: number;
  /** Gauge total pressure at the mouth over the dynamic pressure of the air the car meets. */
  readonly recovery: number;
  /** Hoses side by side. */
  readonly hoses: number;
  readonly hoseDiameter_m: number;
  /** Along the centre line, bends included. */
  readonly hoseLength_m: number;
  /** Darcy friction factor of the hose pulled straight. */
  readonly friction: number;
  /** Shortening of the hose over its stretched length. */
  readonly compression: number;
  /** `null`: round from end to end. */
  readonly pinch: HosePinch | null;
  readonly bends: readonly Bend[];
  readonly leakArea_m2: number;
  readonly leakLoss: number;
  /** Pressure coefficient where the air leaves the wheel. */
  readonly exitCp: number;
  /** Pressure coefficient in the wheelhouse, on the other side of the leak. */
  readonly wheelhouseCp: number;
  /** `null`: a solid disc; the duct's air leaves through the leak. */
  readonly vanes: VanePath | null;
}

/** The day and the tape, at any speed. */
export interface AirPathConditions {
  /** Share of the mouth's area that is not taped, 0 to 1. */
  readonly openFraction: number;
  /** Ambient density. */
  readonly density_kgpm3: number;
  /** Dynamic pressure of the air the car meets over that of clear air. */
  readonly qRatio: number;
  /** Density of the warm air that the leak draws in; ambient where left out. */
  readonly wheelhouseDensity_kgpm3?: number;
}

export interface AirPathState extends AirPathConditions {
  readonly speed_mps: number;
  readonly wheel_radps: number;
}

export interface AirFlows {
  readonly duct_kgps: number;
  readonly vane_kgps: number;
  /** Out of the plenum through the leak; negative when wheelhouse air is drawn in. */
  readonly leak_kgps: number;
  /** Behind the disc, above the ambient static pressure. */
  readonly plenum_Pa: number;
}
