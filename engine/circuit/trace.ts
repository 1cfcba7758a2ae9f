/** A measured lap in SI units: speed over time, distance or both. All columns are equally long. */
export interface TraceColumns {
  /** at least one of time and distance is there */
  time_s?: Float64Array;
  distance_m?: Float64Array;
  speed_mps: Float64Array;
  /** rise over run [-] */
  slope?: Float64Array;
  height_m?: Float64Array;
  /** longitudinal acceleration as a logger measures it, forward positive: the specific force, slope included */
  accel_mps2?: Float64Array;
  /** pressure in the brake lines; a logger with one sensor fills the front */
  brakeFront_Pa?: Float64Array;
  brakeRear_Pa?: Float64Array;
}
