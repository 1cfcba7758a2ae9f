/** How brake heat moves between the axles within a lap, where both brake lines were logged. */
import type { BrakeHeat } from './brake-heat.ts';

export type HeatOverLap = Pick<BrakeHeat, 'power_W' | 'cumulative_J'>;

/**
 * Share of all brake heat that the front makes at a moment, from the pressures of both lines.
 *
 *     φ = φ₀ f / (φ₀ f + (1 − φ₀) r)
 *
 * @remarks
 * f and r are on scales for which φ₀ is the front's share of the whole lap's heat (`axleHeat`). Piston and pad areas, radii and friction per pressure are in φ₀ already; they are held
 * over the lap. With no pressure in either line the balance holds.
 * Source: brake torque in proportion to line pressure, Limpert, Brake Design and Safety, ch. 5 (from memory).
 *
 * @param balanceFront - the car's mean brake balance [-]
 * @param lines - pressure of each line on a scale of its own [-]
 * @returns share of the four brakes' heat [-]
 *
 * @example
 * frontShareAt(0.64, { front: 1.3, rear: 1.3 }) // => 0.64
 * frontShareAt(0.64, { front: 1, rear: 0.8 }) // => 0.689655
 */
export function frontShareAt(balanceFront: number, { front, rear }: { front: number; rear: number }): number {
  const sum = balanceFront * front + (1 - balanceFront) * rear;
  return sum > 0 ? (balanceFront * front) / sum : balanceFront;
}

/** Halvings of the range below: the scale is found to the last digits. */
const HALVINGS = 50;
/** Pressures come over their means; no scale between the lines is farther from 1 than a factor of e³. */
const WIDEST_LOG = 3;

/**
 * Heat of the four brakes as each axle sees it: multiplied by the axle's mean share it is the axle's own. Both axles together
 * make the same heat as before at every moment, and over the lap each makes its mean share: lines say how the balance moves,
 * not what it is. A line that reads too low where it is clipped, or a valve that holds the rear back, takes no heat off an
 * axle's lap.
 */
export function axleHeat(
  heat: BrakeHeat,
  balanceFront: number,
  lines: { front: Float64Array; rear: Float64Array },
): { front: HeatOverLap; rear: HeatOverLap } {
  const shareAt = (scale: number, i: number): number =>
    frontShareAt(balanceFront, { front: lines.front[i]!, rear: scale * lines.rear[i]! });
  const { cumulative_J, total_J } = heat;
  const ofLap = (scale: number): number => {
    let front_J = 0;
    for (let i = 0; i < cumulative_J.length - 1; i++)
      front_J += shareAt(scale, i) * (cumulative_J[i + 1]! - cumulative_J[i]!);
    return front_J;
  };
  let [low, high] = [-WIDEST_LOG, WIDEST_LOG];
  for (let n = 0; n < HALVINGS; n++) {
    const middle = (low + high) / 2;
    // more rear, less front
    if (ofLap(Math.exp(middle)) > balanceFront * total_J) low = middle;
    else high = middle;
  }
  const scale = Math.exp((low + high) / 2);
  const share = heat.power_W.map((_, i) => shareAt(scale, i));
  return {
    front: weighted(heat, (i) => share[i]! / balanceFront),
    rear: weighted(heat, (i) => (1 - share[i]!) / (1 - balanceFront)),
  };
}

function weighted(heat: BrakeHeat, factor: (i: number) => number): HeatOverLap {
  const cumulative_J = new Float64Array(heat.cumulative_J.length);
  for (let i = 0; i < cumulative_J.length - 1; i++)
    cumulative_J[i + 1] = cumulative_J[i]! + factor(i) * (heat.cumulative_J[i + 1]! - heat.cumulative_J[i]!);
  return { power_W: heat.power_W.map((power, i) => factor(i) * power), cumulative_J };
}
