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
  const last = time_s.length - 1;
  const atNode_W = new Float64Array(last + 1);
  let [span, mean] = [0, 0];
  for (let i = 0; i < last; i++) {
    const [spanBefore, before] = [span, mean];
    span = time_s[i + 1]! - time_s[i]!;
    mean = (cumulative_J[i + 1]! - cumulative_J[i]!) / span;
    const between = (before * span + mean * spanBefore) / (spanBefore + span);
    atNode_W[i] = i === 0 ? mean : Math.min(between, 3 * before, 3 * mean);
  }
  atNode_W[last] = mean;
  return { time_s, cumulative_J, atNode_W };
}

/**
 * The parabola with the mean and the first two moments of the power between two moments: its mean, rise and bend (see
 * `LapSteps`) [W]. Power is a parabola over each interval, so Gauss's rule with three points is exact.
 */
export function parabolaOver(curve: HeatCurve, from_s: number, to_s: number, into: Float64Array): void {
  const { time_s, cumulative_J } = curve;
  const last = time_s.length - 2;
  const dt = to_s - from_s;
  const reach = Math.sqrt(0.15);
  let mean = 0;
  let rise = 0;
  let bend = 0;
  for (let node = nodeBefore(time_s, from_s), t = from_s; t < to_s; node++) {
    const end = node >= last ? to_s : Math.min(to_s, time_s[node + 1]!);
    if (cumulative_J[node + 1]! > cumulative_J[node]!)
      for (let i = -1; i <= 1; i++) {
        const at = (t + end) / 2 + i * reach * (end - t);
        const weight = i === 0 ? 8 / 18 : 5 / 18;
        const heat = (weight * (end - t) * powerAt(curve, node, at)) / dt;
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

/** The parabola of a step from those of its halves: moments add up. */
export function joinHalves(first: Float64Array, second: Float64Array, into: Float64Array): void {
  into[0] = (first[0]! + second[0]!) / 2;
  into[1] = (first[1]! + second[1]!) / 4 + 1.5 * (second[0]! - first[0]!);
  into[2] = (first[2]! + second[2]!) / 8 + (5 / 16) * (second[1]! - first[1]!);
}

/** The last node that is not after a moment, but the end of the lap. */
export function nodeBefore(time_s: Float64Array, t: number): number {
  let low = 0;
  let high = time_s.length - 1;
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
  for (let n = 0; n < end_s.length; n++) {
    parabolaOver(curve, n === 0 ? 0 : end_s[n - 1]!, end_s[n]!, parabola);
    powers.power_W[n] = parabola[0]!;
    powers.rise_W[n] = parabola[1]!;
    powers.bend_W[n] = parabola[2]!;
  }
  return powers;
}
