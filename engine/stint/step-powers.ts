/**
 * The heat of a lap cut to steps of any length.
 *
 * The profile gives the heat of each of its intervals, about 3 m of road. Between its nodes the heat so far is a cubic
 * that keeps each interval's heat exactly and never falls, so that power has no stairs and steps far shorter than an
 * interval close in on one answer. Source: Fritsch & Carlson, SIAM J. Numer. Anal. 17 (1980) 238 (from memory: slopes
 * of at most three times the smaller mean keep a cubic monotone; tested).
 */
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
  const atNode_W = nodePowers(heat, time_s);
  let node = 0;
  let last = { t: 0, heat_J: 0, power_W: atNode_W[0]! };
  end_s.forEach((t, n) => {
    while (node < time_s.length - 2 && time_s[node + 1]! < t) node++;
    const here = { t, ...heatAt(t, node, { heat, time_s, atNode_W }) };
    const mean = Math.max(0, (here.heat_J - last.heat_J) / (t - last.t));
    const half = Math.max(-mean, Math.min(mean, (here.power_W - last.power_W) / 2));
    powerStart_W[n] = mean - half;
    powerEnd_W[n] = mean + half;
    last = here;
  });
  return { powerStart_W, powerEnd_W };
}

/** Power at each node: between the means of the intervals at its sides, and 0 where one of them has no heat. */
function nodePowers({ cumulative_J }: HeatOverLap, time_s: Float64Array): Float64Array {
  const span = (i: number): number => time_s[i + 1]! - time_s[i]!;
  const mean = (i: number): number => (cumulative_J[i + 1]! - cumulative_J[i]!) / span(i);
  return time_s.map((_, i) => {
    if (i === 0 || i === time_s.length - 1) return mean(Math.min(i, time_s.length - 2));
    const [before, after] = [mean(i - 1), mean(i)];
    const between = (before * span(i) + after * span(i - 1)) / (span(i - 1) + span(i));
    return Math.min(between, 3 * before, 3 * after);
  });
}

interface Curve {
  heat: HeatOverLap;
  time_s: Float64Array;
  atNode_W: Float64Array;
}

/** Heat so far and power at a moment of the interval that begins at a node. */
function heatAt(t: number, node: number, { heat, time_s, atNode_W }: Curve) {
  const [from, to] = [heat.cumulative_J[node]!, heat.cumulative_J[node + 1]!];
  const [p0, p1] = [atNode_W[node]!, atNode_W[node + 1]!];
  const h = time_s[node + 1]! - time_s[node]!;
  const w = Math.min(1, (t - time_s[node]!) / h);
  const rest = 1 - w;
  return {
    heat_J: from + (to - from) * w * w * (3 - 2 * w) + h * w * rest * (p0 * rest - p1 * w),
    power_W: ((to - from) / h) * 6 * w * rest + p0 * rest * (1 - 3 * w) + p1 * w * (3 * w - 2),
  };
}
