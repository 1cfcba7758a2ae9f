/** The heat of a lap cut to steps of any length. */
import type { HeatOverLap } from '../car/axle-heat.ts';
import type { LapSteps } from '../disc/lap-input.ts';

/** Power at both ends of each step; their mean times the step is the step's exact heat, and neither is below 0. */
export function meanPowers(
  heat: HeatOverLap,
  time_s: Float64Array,
  end_s: Float64Array,
): Pick<LapSteps, 'powerStart_W' | 'powerEnd_W'> {
  const powerStart_W = new Float64Array(end_s.length);
  const powerEnd_W = new Float64Array(end_s.length);
  let node = 0;
  let last = { t: 0, heat: 0, power: powerAt(heat.power_W, 0, 0) };
  end_s.forEach((t, n) => {
    while (node < time_s.length - 2 && time_s[node + 1]! < t) node++;
    const w = Math.min(1, (t - time_s[node]!) / (time_s[node + 1]! - time_s[node]!));
    const [from, to] = [heat.cumulative_J[node]!, heat.cumulative_J[node + 1]!];
    const here = { t, heat: from + w * (to - from), power: powerAt(heat.power_W, node, w) };
    const mean = Math.max(0, (here.heat - last.heat) / (t - last.t));
    const half = Math.max(-mean, Math.min(mean, (here.power - last.power) / 2));
    powerStart_W[n] = mean - half;
    powerEnd_W[n] = mean + half;
    last = here;
  });
  return { powerStart_W, powerEnd_W };
}

/** Power at a place between nodes, from the means of the intervals around it. */
function powerAt(power_W: Float64Array, node: number, w: number): number {
  const at = (i: number): number => power_W[Math.min(Math.max(i, 0), power_W.length - 2)]!;
  return w < 0.5
    ? at(node) * (0.5 + w) + at(node - 1) * (0.5 - w)
    : at(node) * (1.5 - w) + at(node + 1) * (w - 0.5);
}
