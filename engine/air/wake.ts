/** The air behind a car ahead: slower, a little warmer, and easier to drive through. Gap `Infinity` is clear air. */

/** Drag area of a fast closed car ahead. From memory [m²] */
const LEADER_DRAG_AREA_M2 = 1.05;
/** Share of its own drag that a follower is spared right behind a car ahead. From memory, 0.15 to 0.35 [-] */
const TOW_STRENGTH = 0.25;
/** Wake's area at the tail over the leader's drag area. From memory: puts q/q∞ near 0.6 half a length behind [-] */
const NEAR_AREA_RATIO = 2.81;
/** Length over which the wake starts to grow, over √(drag area). From memory: 0.75 at 2 lengths, 0.9 at 6 [-] */
const GROWTH_LENGTH_RATIO = 5.07;
/** Gap over which the tow fades. From memory: puts 0.9 of the drag at two car lengths [m] */
const TOW_LENGTH_M = 2.4;
/** Warming right behind a car ahead that rejects 250 kW at 60 m/s into 3 m² of air, rough [K] */
const NEAR_HEAT_K = 1.5;

/** Half the span of speeds over which a car that pulls out leaves the wake. Smoothing, no source [m/s] */
const PULL_OUT_MPS = 4;

/** Growth of the wake's area with the gap: 1 at the tail, (gap/length)^(2/3) far behind, level at the tail. */
function wakeGrowth(gap_m: number, length_m: number): number {
  return Math.cbrt(1 + (Math.max(0, gap_m) / length_m) ** 2);
}

/**
 * Share of the dynamic pressure that reaches a car in the wake of a car ahead, on its centre line.
 *
 *     δ (1 − δ) = CdA / 2A;  A = 2.81 CdA [1 + (gap/x₀)²]^(1/3);  x₀ = 5.07 √CdA;  q/q∞ = (1 − δ)²
 *
 * @remarks
 * A uniform wake that holds all of the leader's lost momentum; its area grows so that far behind δ ∝ gap^(−2/3),
 * as in an axisymmetric wake. 0.62 at 2.3 m, 0.76 at 9 m, 0.88 at 27 m, 1 far away. Falling drag does not prove
 * a lower q: published wakes of two bodies move drag both ways below one length (Watkins and Vino,
 * J. Wind Eng. Ind. Aerodyn. 96 (2008) 1232).
 * Source: momentum integral of a wake; its area and growth are from memory and uncertain by ±0.05 in q/q∞.
 *
 * @param gap_m - free length between the cars; `Infinity` for clear air [m]
 * @param dragArea_m2 - drag area of the car ahead, above 0 [m²]
 * @returns ratio of dynamic pressures q/q∞, at most 1 [-]
 *
 * @example
 * dynamicPressureRatioWake(9) // => 0.759
 */
export function dynamicPressureRatioWake(gap_m: number, dragArea_m2: number = LEADER_DRAG_AREA_M2): number {
  const areaRatio = NEAR_AREA_RATIO * wakeGrowth(gap_m, GROWTH_LENGTH_RATIO * Math.sqrt(dragArea_m2));
  const deficit = (1 - Math.sqrt(1 - 2 / areaRatio)) / 2;
  return (1 - deficit) ** 2;
}

/**
 * Share of its own drag that a car still pays in the tow of a car ahead.
 *
 *     share = 1 − s / [1 + (gap/2.4 m)²]^(1/3)
 *
 * @remarks
 * 0.75 close behind, 0.9 at 9 m, 1 far away. The sign below one car length depends on the leader's tail; here the
 * tow is always a gain. Zabat, Stabile, Frascaroli and Browand (SAE 940421) found a weak effect beyond one length.
 * Source: shape and values from memory; an editable default.
 *
 * @param gap_m - free length between the cars; `Infinity` for clear air [m]
 * @param strength - share of drag spared at no gap [-]
 * @returns share of the drag that remains [-]
 *
 * @example
 * towDragShare(9) // => 0.899
 */
export function towDragShare(gap_m: number, strength: number = TOW_STRENGTH): number {
  return 1 - strength / wakeGrowth(gap_m, TOW_LENGTH_M);
}

/**
 * Warming of the air that a following car takes in, by the heat that the car ahead rejects.
 *
 *     ΔT = 1.5 K / [1 + (gap/x₀)²]^(1/3);  x₀ = 5.07 √CdA
 *
 * @remarks
 * A mean over the wake; a third of it may carry three times as much. Its effect on density is under 2 %.
 * Source: energy balance of 250 kW on the wake's air; the rejected power is from memory.
 *
 * @param gap_m - free length between the cars; `Infinity` for clear air [m]
 * @param dragArea_m2 - drag area of the car ahead, above 0 [m²]
 * @returns rise over ambient [K]
 *
 * @example
 * wakeHeatRise(9) // => 0.945
 */
export function wakeHeatRise(gap_m: number, dragArea_m2: number = LEADER_DRAG_AREA_M2): number {
  return NEAR_HEAT_K / wakeGrowth(gap_m, GROWTH_LENGTH_RATIO * Math.sqrt(dragArea_m2));
}

/**
 * How far a car that pulls out of line above some speed has left the wake.
 *
 *     share = x² (3 − 2x);  x = (V − V₀ + 4 m/s) / 8 m/s, held between 0 and 1
 *
 * @remarks
 * A driver pulls out in one move; the smooth step keeps drag and flow free of jumps, so that stints move smoothly
 * with the speed at which it happens.
 * Source: common practice, no source, for pulling out of line to cool; the step is numerical.
 *
 * @param speed_mps - speed now [m/s]
 * @param pullOut_mps - speed at which the car is half out of the wake [m/s]
 * @returns 0 in line, 1 beside the wake [-]
 *
 * @example
 * shareBesideWake(49, 50) // => 0.31640625
 * shareBesideWake(54, 50) // => 1
 */
export function shareBesideWake(speed_mps: number, pullOut_mps: number): number {
  const x = (speed_mps - pullOut_mps + PULL_OUT_MPS) / (2 * PULL_OUT_MPS);
  const held = Math.min(1, Math.max(0, x));
  return held * held * (3 - 2 * held);
}
