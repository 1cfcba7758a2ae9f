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
  /** 1 where the brake is held on a disc at rest. */
  pressed: Uint8Array;
}

/** Heat of one corner's brake from the heat of all four, and from the drag of its pads. */
export interface CornerHeat {
  /** Share of all four brakes' heat in this corner, the lap's mass included [-] */
  share: number;
  discShare: number;
  /** Power of dragging pads per speed of the car [W/(m/s)] */
  drag_N: number;
}
