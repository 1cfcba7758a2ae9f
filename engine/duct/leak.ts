/** The gap between the backing plate and the disc, through which duct air is lost and warm air drawn in. */

/** Loss of a sharp-edged gap: 1/0.61², its jet being 0.61 of the gap. Source: Kirchhoff's contraction, π/(π+2) [-] */
export const LOSS_SHARP_GAP = 2.7;

/**
 * Area through which a backing plate leaks.
 *
 *     A = length · gap
 *
 * @remarks
 * Sum of the open edge around plate, hub and disc. 10 to 30 cm² on a fast car: common practice, no source.
 * Source: geometry.
 *
 * @param edge_m - length of the open edge [m]
 * @param gap_m - mean width of the gap [m]
 * @returns leak area [m²]
 *
 * @example
 * areaLeak(0.8, 0.0015) // => 0.0012
 */
export function areaLeak(edge_m: number, gap_m: number): number {
  return edge_m * gap_m;
}
