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

/** The heat of a lap over time. */
export interface HeatCurve {
  time_s: Float64Array;
  cumulative_J: Float64Array;
  /** Power at each node [W] */
  atNode_W: Float64Array;
}

/** Power at each node: between the means of the intervals at its sides, and 0 where one of them has no heat. */
export function heatCurve({ cumulative_J }: HeatOverLap, time_s: Float64Array): HeatCurve {
  const span = (i: number): number => time_s[i + 1]! - time_s[i]!;
  const mean = (i: number): number => (cumulative_J[i + 1]! - cumulative_J[i]!) / span(i);
  const atNode_W = time_s.map((_, i) => {
    if (i === 0 || i === time_s.length - 1) return mean(Math.min(i, time_s.length - 2));
    const [before, after] = [mean(i - 1), mean(i)];
    const between = (before * span(i) + after * span(i - 1)) / (span(i - 1) + span(i));
    return Math.min(between, 3 * before, 3 * after);
  });
  return { time_s, cumulative_J, atNode_W };
}

/** Places and weights on 0 to 1 of the rule that is exact up to the fifth power (Gauss-Legendre, three points). */
const GAUSS = [0.5 - Math.sqrt(0.15), 0.5, 0.5 + Math.sqrt(0.15)] as const;
const WEIGHT = [5 / 18, 8 / 18, 5 / 18] as const;

/** The parabola with the mean and the first two moments of the power between two moments: its mean, rise and bend (see `LapSteps`) [W] */
export function parabolaOver(curve: HeatCurve, from_s: number, to_s: number, into: Float64Array): void {
  const { time_s, cumulative_J } = curve;
  const last = time_s.length - 2;
  const dt = to_s - from_s;
  let [mean, rise, bend] = [0, 0, 0];
  for (let node = nodeBefore(time_s, from_s), t = from_s; t < to_s; node++) {
    const end = node >= last ? to_s : Math.min(to_s, time_s[node + 1]!);
    if (cumulative_J[node + 1]! > cumulative_J[node]!)
      for (let i = 0; i < 3; i++) {
        const at = t + GAUSS[i]! * (end - t);
        const heat = (WEIGHT[i]! * (end - t) * powerAt(curve, node, at)) / dt;
        const w = (at - from_s) / dt;
        mean += heat;
        rise += 12 * heat * (w - 0.5);
        bend += 5 * heat * (1 - 6 * w + 6 * w * w);
      }
    t = end;
  }
  into[0] = mean;
  into[1] = rise;
  into[2] = bend;
}

/** The last node that is not after a moment, but the end of the lap. */
export function nodeBefore(time_s: Float64Array, t: number): number {
  let [low, high] = [0, time_s.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (time_s[middle]! <= t) low = middle;
    else high = middle;
  }
  return low;
}

/** Power at a moment of the interval that begins at a node [W] */
function powerAt({ time_s, cumulative_J, atNode_W }: HeatCurve, node: number, t: number): number {
  const h = time_s[node + 1]! - time_s[node]!;
  const w = Math.min(1, (t - time_s[node]!) / h);
  const rest = 1 - w;
  const mean = (cumulative_J[node + 1]! - cumulative_J[node]!) / h;
  return mean * 6 * w * rest + atNode_W[node]! * rest * (1 - 3 * w) + atNode_W[node + 1]! * w * (3 * w - 2);
}

/** The power of a lap over its steps. */
export function stepPowers(
  curve: HeatCurve,
  end_s: Float64Array,
): Pick<LapSteps, 'power_W' | 'rise_W' | 'bend_W'> {
  const column = (): Float64Array => new Float64Array(end_s.length);
  const powers = { power_W: column(), rise_W: column(), bend_W: column() };
  const parabola = new Float64Array(3);
  end_s.forEach((t, n) => {
    parabolaOver(curve, end_s[n - 1] ?? 0, t, parabola);
    [powers.power_W[n], powers.rise_W[n], powers.bend_W[n]] = parabola as unknown as [number, number, number];
  });
  return powers;
}
