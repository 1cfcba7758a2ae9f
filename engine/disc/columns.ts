/** The temperatures of a corner that are kept. */

/** Temperatures of one corner, one entry a sample [K]. */
export interface CornerColumns {
  /** rubbed face */
  face_K: Float64Array;
  /** mean of the cheek ("bulk") */
  cheek_K: Float64Array;
  /** vane wall; the mid-plane of a solid disc */
  wall_K: Float64Array;
  /** outer edge, where paint sits */
  rim_K: Float64Array;
  bell_K: Float64Array;
  /** rubbed side of the pad */
  pad_K: Float64Array;
  caliper_K: Float64Array;
  fluid_K: Float64Array;
  /** air of the wheelhouse; at the very start that of the day */
  wheelhouse_K: Float64Array;
}
