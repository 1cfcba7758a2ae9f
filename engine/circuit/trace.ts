/** A measured lap in SI units: speed over time, distance or both. All columns are equally long. */
export interface TraceColumns {
  /** at least one of time and distance is there */
  time_s?: Float64Array;
  distance_m?: Float64Array;
  speed_mps: Float64Array;
  /** rise over run [-] */
  slope?: Float64Array;
  height_m?: Float64Array;
}
