/** What the speed profile and the brake heat need to know of a car, its driver and the air. SI only. */

/** A car as a point mass with downforce. */
export interface CarDynamics {
  /** car, driver and fuel [kg] */
  mass_kg: number;
  /** effective over true mass: what the turning wheels and the driveline add [-] */
  rotationalFactor: number;
  /** rolling resistance over weight [-] */
  rolling: number;
  /** share of the static weight on the front axle [-] */
  weightFront: number;
  cgHeight_m: number;
  wheelbase_m: number;
  /** engine power at the density where `AirState.powerFactor` is 1 [W] */
  power_W: number;
  /** wheels over engine [-] */
  efficiency: number;
  dragArea_m2: number;
  downforceArea_m2: number;
  drivenAxle: 'front' | 'rear' | 'both';
  /** peak friction of the tyres, the same along and across [-] */
  grip: number;
  loadedRadius_m: number;
  /** longitudinal slip of a braked tyre [-] */
  slip: number;
  /** braking power of the closed-throttle engine at full revs, at the wheels [W] */
  engineBraking_W: number;
}

/** How much of the grip a driver uses, and how the right foot moves from one pedal to the other. */
export interface Driver {
  /** share of the lateral grip used in corners [-] */
  corneringShare: number;
  /** share of the longitudinal grip used in braking [-] */
  brakingShare: number;
  /** share of the driven axle's grip used in acceleration [-] */
  tractionShare: number;
  /** from lifting to touching the brake [s] */
  coast_s: number;
  /** from touching the brake to full brake force [s] */
  buildUp_s: number;
}

export interface AirState {
  density_kgpm3: number;
  /** engine power over its rated value: the density ratio of an aspirated engine, 1 for one that holds it */
  powerFactor: number;
  /** drag over drag in clear air: below 1 in a tow */
  dragFactor: number;
  /** faster than this the car runs beside the wake, out of the tow; absent: it stays in line [m/s] */
  pullOut_mps?: number;
}
