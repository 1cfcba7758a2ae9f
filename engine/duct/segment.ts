/** The segment that a straight edge cuts off a circle, or off an ellipse along one of its axes. */

/**
 * Area of a segment as a share of the whole circle or ellipse.
 *
 *     s = (acos u − u √(1 − u²)) / π,   u = 1 − 2 t
 *
 * @remarks
 * An ellipse is a stretched circle, and stretching keeps shares of area.
 * Source: area of a circular segment, R² (θ − sin θ)/2.
 *
 * @param depth - height of the segment over the diameter, or the axis, 0 to 1 [-]
 * @returns share of the area [-]
 *
 * @example
 * shareSegment(0.2980) // => 0.249984
 */
export function shareSegment(depth: number): number {
  const u = 1 - 2 * depth;
  return (Math.acos(u) - u * Math.sqrt(Math.max(0, 1 - u * u))) / Math.PI;
}
