/** The air behind a car ahead: it has lost total pressure and is a little warmer. Gap `Infinity` is clear air. */

import type { ValidRange } from '../valid-range.ts';

/** Drag area of a fast closed car ahead. From memory [m²] */
const LEADER_DRAG_AREA_M2 = 1.05;
/** Wake's area at the tail over the leader's drag area. From memory: puts q/q∞ near 0.6 half a length behind [-] */
const NEAR_AREA_RATIO = 2.81;
/** Length over which the wake starts to grow, over √(drag area). From memory: 0.75 at 2 lengths, 0.9 at 6 [-] */
const GROWTH_LENGTH_RATIO = 5.07;
/** Warming right behind a car ahead that rejects 250 kW at 60 m/s into 3 m² of air, rough [K] */
const NEAR_HEAT_K = 1.5;

/** To be compared with the gap of each phase in traffic. */
export const wakeGapRange: ValidRange = {
  law: 'wake of the car ahead',
  quantity: 'gap to the car ahead',
  unit: 'm',
  low: 2,
  high: 30,
  source: 'from memory: half a length to six lengths behind a closed car',
};

/** To be compared with the offset of a stint in traffic. */
export const wakeOffsetRange: ValidRange = {
  law: 'wake of the car ahead',
  quantity: 'offset from the middle of the wake',
  unit: 'm',
  low: 0,
  high: 3,
  source: 'from memory: beyond, the flow around the car ahead is faster than clear air',
};

/** Where in which wake. */
export interface WakePlace {
  /** Free length between the cars; `Infinity` in clear air. */
  readonly gap_m: number;
  /** Sideways from the middle of the wake; 0 where left out. */
  readonly offset_m?: number;
  /** Drag area of the car ahead, above 0; that of a fast closed car where left out. */
  readonly dragArea_m2?: number;
  /** Lost total pressure over that of the usual wake, 0 to 2; 1 where left out. */
  readonly strength?: number;
}

/**
 * Growth of a wake's area with the gap.
 *
 *     [1 + (gap/x₀)²]^(1/3)
 *
 * @remarks
 * 1 and level at the tail, (gap/x₀)^(2/3) far behind. A gap below 0 counts as none.
 * Source: area of a far axisymmetric wake, in texts on turbulent flow; the form near the tail is ours.
 *
 * @param gap_m - free length between the cars [m]
 * @param length_m - x₀, over which the growth starts [m]
 * @returns area over that at the tail [-]
 *
 * @example
 * wakeGrowth(9, 5.195) // => 1.58758
 */
export function wakeGrowth(gap_m: number, length_m: number): number {
  return Math.cbrt(1 + (Math.max(0, gap_m) / length_m) ** 2);
}

const growthAt = ({ gap_m, dragArea_m2 = LEADER_DRAG_AREA_M2 }: WakePlace): number =>
  wakeGrowth(gap_m, GROWTH_LENGTH_RATIO * Math.sqrt(dragArea_m2));

/**
 * Share of the car's speed that the air in the middle of a wake has lost.
 *
 *     δ (1 − δ) = CdA / 2A;  A = 2.81 CdA [1 + (gap/x₀)²]^(1/3);  x₀ = 5.07 √CdA
 *
 * @remarks
 * A uniform wake that holds all of the leader's lost momentum; its area grows so that far behind δ ∝ gap^(−2/3), as in an
 * axisymmetric wake. Gaps of 2 to 30 m. Behind a block on a moving floor a wake of lost momentum was measured from 10 heights
 * on, which decays a little faster, with the power −3/4 (Eskridge and Thompson, EPA-600/3-82-007, 1982; the power from memory).
 * Source: momentum integral of a wake; its area and growth are from memory.
 *
 * @param place - gap and drag area of the car ahead [m, m²]
 * @returns velocity deficit over the speed of the car, 0 in clear air [-]
 *
 * @example
 * deficitWake({ gap_m: 9 }) // => 0.128627
 */
export function deficitWake(place: WakePlace): number {
  return (1 - Math.sqrt(1 - 2 / (NEAR_AREA_RATIO * growthAt(place)))) / 2;
}

/**
 * Half-width of a wake: the offset at which its velocity deficit is half of that in its middle.
 *
 *     y½ = s √(2 ln 2),  s² = (A/π) (1 − δ) / (1 − δ/2)
 *
 * @remarks
 * A Gaussian deficit δ exp(−r²/2s²) over the road, which cuts the round wake in half: its momentum π s² (δ − δ²/2) is that of
 * the uniform wake with the same middle, A δ (1 − δ). 1.1 m at the tail, 1.4 m at 9 m and 2.0 m at 27 m.
 * Source: Gaussian profile of a self-preserving wake, in texts on turbulent flow; momentum integral; the area from memory.
 *
 * @param place - gap and drag area of the car ahead [m, m²]
 * @returns half-width [m]
 *
 * @example
 * halfWidthWake({ gap_m: 9 }) // => 1.3874
 */
export function halfWidthWake(place: WakePlace): number {
  return spreadOf(place) * Math.sqrt(2 * Math.LN2);
}

function spreadOf(place: WakePlace): number {
  const { dragArea_m2 = LEADER_DRAG_AREA_M2 } = place;
  const area_m2 = NEAR_AREA_RATIO * dragArea_m2 * growthAt(place);
  const deficit = deficitWake(place);
  return Math.sqrt(((area_m2 / Math.PI) * (1 - deficit)) / (1 - deficit / 2));
}

/**
 * How much of a wake is felt beside its middle.
 *
 *     g = exp(−y²/2s²)
 *
 * @remarks
 * Offsets to 3 m; beyond, the air beside a car is faster than clear air, which is left out.
 * Source: Gaussian profile of a self-preserving wake; its width from the momentum.
 *
 * @param place - gap, offset and drag area of the car ahead [m, m²]
 * @returns share of the deficit in the middle, 1 there and in clear air [-]
 *
 * @example
 * shareAcrossWake({ gap_m: 9, offset_m: 1.3874 }) // => 0.5000
 */
export function shareAcrossWake(place: WakePlace): number {
  const { gap_m, offset_m = 0 } = place;
  if (!Number.isFinite(gap_m)) return 1;
  return Math.exp(-0.5 * (offset_m / spreadOf(place)) ** 2);
}

/**
 * Share of the dynamic pressure that reaches a mouth in the wake of a car ahead.
 *
 *     q/q∞ = 1 − w [1 − (1 − δ g)²]
 *
 * @remarks
 * The wake has the static pressure around it, so what is lost is total pressure; w scales the loss, 0 to 2. In the middle with
 * w = 1: 0.62 at 2.3 m, 0.76 at 9 m, 0.88 at 27 m, 1 far away. Falling drag does not prove a lower q: published wakes of two
 * bodies move drag both ways below one length (Watkins and Vino, J. Wind Eng. Ind. Aerodyn. 96 (2008) 1232).
 * Source: momentum integral of a wake and Gaussian profile; strength and growth from memory, uncertain by ±0.05 in q/q∞.
 *
 * @param place - gap, offset, drag area of the car ahead and strength [m, m, m², -]
 * @returns ratio of dynamic pressures q/q∞, at most 1 [-]
 *
 * @example
 * dynamicPressureRatioWake({ gap_m: 9 }) // => 0.759
 * dynamicPressureRatioWake({ gap_m: 9, offset_m: 2 }) // => 0.940
 */
export function dynamicPressureRatioWake(place: WakePlace): number {
  const { strength = 1 } = place;
  const slowed = 1 - deficitWake(place) * shareAcrossWake(place);
  return 1 - strength * (1 - slowed ** 2);
}

/**
 * Warming of the air that a following car takes in, by the heat that the car ahead rejects.
 *
 *     ΔT = 1.5 K · w g / [1 + (gap/x₀)²]^(1/3);  x₀ = 5.07 √CdA
 *
 * @remarks
 * A mean over the wake; a third of it may carry three times as much. Heat spreads as momentum does. Its effect on density is
 * under 2 %. Source: energy balance of 250 kW on the wake's air; the rejected power is from memory.
 *
 * @param place - gap, offset, drag area of the car ahead and strength [m, m, m², -]
 * @returns rise over ambient [K]
 *
 * @example
 * wakeHeatRise({ gap_m: 9 }) // => 0.945
 */
export function wakeHeatRise(place: WakePlace): number {
  const { strength = 1 } = place;
  return (strength * NEAR_HEAT_K * shareAcrossWake(place)) / growthAt(place);
}
