/** A corner through a whole stint under the library's integrator, begun anew wherever anything has a kink. */
import { Outcome, Solver } from 'odex';
import type { Stretch } from './drive.ts';
import type { Columns, Equations, Moment } from './equations.ts';

const RELATIVE = 1e-8;
const ABSOLUTE_K = 1e-7;
/** Longest time from one beginning to the next [s] */
const LONGEST_S = 5;
/** Times closer than this are one [s] */
const SAME_S = 1e-7;

export interface Sample extends Columns {
  /** From the begin of the stint [s] */
  t: number;
}

export interface Integrated {
  samples: Sample[];
  /** Highest face of each lap [K] */
  peaks: { lap: number; peak: number }[];
  evaluations: number;
}

/** `sampleAt` are the times wanted, rising, from the begin of the stint [s]. */
export function integrate(
  { start_K, rates, columns, face }: Equations,
  stretches: Stretch[],
  { shares, sampleAt }: { shares: number[]; sampleAt: readonly number[] },
): Integrated {
  const samples: Sample[] = [{ t: 0, ...columns(start_K) }];
  const peaks: Integrated['peaks'] = [];
  let T = start_K;
  let begin_s = 0;
  let next = sampleAt.findIndex((t) => t > 0);
  let evaluations = 0;
  for (const stretch of stretches) {
    let peak = T[face]!;
    const share = shares[stretch.leg]! * stretch.massRatio;
    for (const span of stretch.spans) {
      const momentAt = (t: number): Moment => ({
        speed_mps: span.speed_mps(t),
        braking_W: share * span.power_W(t),
        pressed: span.pressed,
      });
      const ratesAt = (t: number, y: number[]): number[] => {
        evaluations++;
        return rates(y, momentAt(t));
      };
      for (let from = span.from_s; from < span.to_s - SAME_S;) {
        const wanted = (sampleAt[next] ?? Infinity) - begin_s;
        const isSample = wanted < span.to_s - SAME_S;
        const to = Math.min(isSample ? wanted : span.to_s, from + LONGEST_S);
        const after = advance(ratesAt, [from, to], T);
        peak = Math.max(
          peak,
          topBetween(after.steps.map(({ t, y }) => ({ t, y: y[face]!, slope: ratesAt(t, y)[face]! }))),
        );
        T = after.T;
        from = to;
        if (wanted - to > SAME_S) continue;
        samples.push({ t: sampleAt[next]!, ...columns(T) });
        next++;
      }
    }
    begin_s += stretch.duration_s;
    if (stretch.lap > 0) peaks.push({ lap: stretch.lap, peak });
  }
  return { samples, peaks, evaluations };
}

/** From one moment to another, and all that the integrator found on the way. */
function advance(
  rates: (t: number, y: number[]) => number[],
  [from, to]: readonly [number, number],
  start: number[],
): { T: number[]; steps: { t: number; y: number[] }[] } {
  const solver = new Solver(start.length);
  solver.relativeTolerance = RELATIVE;
  solver.absoluteTolerance = ABSOLUTE_K;
  solver.initialStepSize = Math.min((to - from) / 2, 0.05);
  const steps = [{ t: from, y: start }];
  const { y, outcome } = solver.solve(rates, from, start, to, (_, __, t, at) => {
    if (t > from) steps.push({ t, y: at });
  });
  if (outcome !== Outcome.Converged || !y.every(Number.isFinite))
    throw new Error(`not converged at ${from} s`);
  return { T: y, steps };
}

interface Point {
  t: number;
  y: number;
  slope: number;
}

/** Highest point of the cubics through values and slopes. */
function topBetween(points: Point[]): number {
  let top = Math.max(...points.map(({ y }) => y));
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    if (!(a.slope > 0 && b.slope < 0)) continue;
    const h = b.t - a.t;
    for (let n = 1; n < 64; n++) {
      const w = n / 64;
      const u = 1 - w;
      const value =
        a.y * u * u * (1 + 2 * w) + b.y * w * w * (3 - 2 * w) + h * w * u * (a.slope * u - b.slope * w);
      top = Math.max(top, value);
    }
  }
  return top;
}
