/** What one kind of lap does to a corner, step by step, before it is known how hot the corner is. */
export interface LapSteps {
  steps: number;
  /** Length of each step [s] */
  dt_s: Float64Array;
  /** Mean car speed of each step [m/s] */
  speed_mps: Float64Array;
  /** Heat of all four brakes at the start and at the end of each step; the mean of both times dt is exact [W] */
  powerStart_W: Float64Array;
  powerEnd_W: Float64Array;
  /** 1 where the pads are pressed on the disc. */
  pressed: Uint8Array;
}
