import type { Circuit, Segment } from './circuit.ts';

/** A named corner along the lap. `from` and `to` are where the road starts and stops turning. */
export interface Corner {
  name: string;
  /** where the curvature is largest, the middle of that stretch [m] */
  at_m: number;
  from_m: number;
  to_m: number;
}

/** A circuit on a uniform distance grid of n + 1 nodes; the last node is the first, one lap on. */
export interface Layout {
  length_m: number;
  step_m: number;
  distance_m: Float64Array;
  /** of the driven line, left positive [1/m] */
  curvature_pm: Float64Array;
  /** rise over run [-] */
  slope: Float64Array;
  /** over the line [m] */
  height_m: Float64Array;
  /** local grip over the circuit's [-] */
  grip: Float64Array;
  corners: Corner[];
}

export interface LayoutOptions {
  step_m?: number;
  /** length over which curvature and slope grow to an arc's full value */
  transition_m?: number;
}

/** Distance grid for speed, heat and map. A fourth of a transition, so that no change falls between nodes. */
const STEP_M = 3;

/**
 * Length of a transition. Common practice, no source: 20-30 m, what a steering wheel needs at 100 km/h for
 * the half second of turning in.
 */
const TRANSITION_M = 24;

const curvatureOf = (s: Segment): number =>
  s.radius_m === null ? 0 : (s.turn === 'right' ? -1 : 1) / s.radius_m;

/** Running integral along the chain of a quantity held over each segment, continued over laps either way. */
function runningIntegral(segments: Segment[], valueOf: (s: Segment) => number): (at_m: number) => number {
  const ends: number[] = [0];
  const sums: number[] = [0];
  for (const s of segments) {
    ends.push(ends.at(-1)! + s.length_m);
    sums.push(sums.at(-1)! + s.length_m * valueOf(s));
  }
  const length = ends.at(-1)!;
  const perLap = sums.at(-1)!;
  return (at_m) => {
    const lap = Math.floor(at_m / length);
    const s = at_m - lap * length;
    let k = 1;
    while (k < segments.length && ends[k]! < s) k++;
    return lap * perLap + sums[k - 1]! + (s - ends[k - 1]!) * valueOf(segments[k - 1]!);
  };
}

/** Corners of the chain: runs of segments that share a name. */
function cornersOf(segments: Segment[], margin_m: number): Corner[] {
  const corners: (Corner & { peak: number })[] = [];
  let from_m = 0;
  let last: string | undefined;
  for (const s of segments) {
    const to_m = from_m + s.length_m;
    const peak = Math.abs(curvatureOf(s));
    const open = corners.at(-1);
    if (s.name !== undefined && s.name === last && open) {
      open.to_m = to_m + margin_m;
      if (peak > open.peak) Object.assign(open, { peak, at_m: (from_m + to_m) / 2 });
    } else if (s.name !== undefined) {
      const at_m = (from_m + to_m) / 2;
      corners.push({ name: s.name, at_m, from_m: from_m - margin_m, to_m: to_m + margin_m, peak });
    }
    last = s.name;
    from_m = to_m;
  }
  return corners.map(({ peak: _, ...corner }) => corner);
}

/**
 * Puts a circuit on a uniform grid. Each quantity is averaged over a window as long as a transition: an
 * abrupt change becomes a linear ramp, which for curvature is a clothoid, and the total turning stays exact.
 */
export function layoutCircuit(circuit: Circuit, options: LayoutOptions = {}): Layout {
  const { segments } = circuit;
  const length_m = segments.reduce((sum, s) => sum + s.length_m, 0);
  const window_m = options.transition_m ?? TRANSITION_M;
  const n = Math.round(length_m / (options.step_m ?? STEP_M));
  const step_m = length_m / n;
  const onGrid = (f: (at_m: number) => number): Float64Array =>
    Float64Array.from({ length: n + 1 }, (_, i) => f(i * step_m));
  const averaged = (valueOf: (s: Segment) => number): Float64Array => {
    const integral = runningIntegral(segments, valueOf);
    return onGrid((s) => (integral(s + window_m / 2) - integral(s - window_m / 2)) / window_m);
  };
  const slopeOf = (s: Segment): number => s.slope_pct / 100;
  return {
    length_m,
    step_m,
    distance_m: onGrid((s) => s),
    curvature_pm: averaged(curvatureOf),
    slope: averaged(slopeOf),
    height_m: onGrid(runningIntegral(segments, slopeOf)),
    grip: averaged((s) => s.grip_factor ?? 1),
    corners: cornersOf(segments, window_m / 2),
  };
}
