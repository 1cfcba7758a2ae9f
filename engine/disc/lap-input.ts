/** What one kind of lap does to a corner, step by step, before it is known how hot the corner is. */
export interface LapSteps {
  steps: number;
  /** Length of each step [s] */
  dt_s: Float64Array;
  /** Mean car speed of each step [m/s] */
  speed_mps: Float64Array;
  /**
   * Power of all four brakes over the share w of each step: power + rise (w − ½) + bend (1 − 6 w + 6 w²). So it keeps its
   * mean, which times dt is the exact heat, and its first two moments [W]
   */
  power_W: Float64Array;
  rise_W: Float64Array;
  bend_W: Float64Array;
  /** 1 where the pads are pressed on the disc. */
  pressed: Uint8Array;
}
