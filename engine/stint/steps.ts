/**
 * The uneven steps of one lap: few where little happens, and none across a brake going on, peaking or going off. The heat
 * of each step is exact, whatever its length.
 */
import type { LapSteps } from '../disc/lap-input.ts';
import { brakingsOf, type Braking } from './braking.ts';
import type { Motion } from './motion.ts';
import { highest } from './measures.ts';
import type { Axle } from './result.ts';
import { stepEnds } from './rehearsal.ts';
import { heatCurve, nodeBefore, stepPowers, type HeatCurve } from './step-powers.ts';

/** First step of a standing car, growth from one to the next, and longest [s] */
const FIRST_S = 0.02;
const GROWTH = 1.5;
const LONGEST_S = 5;

export interface LapPlan extends LapSteps {
  /** The steps as each axle takes them: with its own powers where the balance moves within the lap, else these. */
  axles: Record<Axle, LapSteps>;
  /** Distance from the line, speed and time at the end of each step. */
  end_m: Float64Array;
  endSpeed_mps: Float64Array;
  end_s: Float64Array;
  duration_s: number;
  /** Braking phases, from the step that starts them to the step after them. */
  stops: {
    fromStep: number;
    toStep: number;
    place: string;
    from_mps: number;
    to_mps: number;
    from_m: number;
  }[];
  topSpeed_mps: number;
  startSpeed_mps: number;
  heat_J: number;
  mass_kg: number;
  place: (distance_m: number) => string;
}

/** Steps of a driven lap; `scale` shortens all of them, to test the error they make. */
export function planLap(motion: Motion, scale: number, place: (distance_m: number) => string): LapPlan {
  const { profile, heat } = motion;
  const { time_s } = profile;
  const brakings = brakingsOf(motion);
  const duration_s = time_s.at(-1)!;
  const marks = brakings.map(({ from, peak, to }) =>
    [from, peak, Math.max(peak, to - 1), to].map((node) => time_s[node]!),
  );
  const curve = heatCurve(heat, time_s);
  const end_s = inPieces(stepEnds(curve, marks, duration_s), Math.round(1 / scale));
  const steps = fillSteps(motion, { curve, brakings, end_s });
  const stops = brakings.filter(({ isTouch }) => !isTouch).map((braking) => stopOf(motion, braking, end_s));
  return {
    ...steps,
    axles: axlesOf(motion, steps),
    duration_s,
    stops,
    topSpeed_mps: highest(profile.speed_mps),
    startSpeed_mps: profile.speed_mps[0]!,
    heat_J: heat.total_J,
    mass_kg: motion.mass_kg,
    place,
  };
}

/** Every step in so many equal pieces. */
function inPieces(ends: number[], pieces: number): Float64Array {
  if (pieces === 1) return Float64Array.from(ends);
  return Float64Array.from({ length: ends.length * pieces }, (_, n) => {
    const step = Math.floor(n / pieces);
    const end = ends[step]!;
    const from = ends[step - 1] ?? 0;
    return end - ((pieces - 1 - (n % pieces)) / pieces) * (end - from);
  });
}

/** Steps of a standing car: their lengths grow to the longest and add up to the time. */
export function planStand(
  duration_s: number,
  held: boolean,
  scale: number,
): LapSteps & { end_s: Float64Array } {
  const lengths: number[] = [];
  let sum = 0;
  for (let dt = FIRST_S * scale; sum < duration_s; dt = Math.min(dt * GROWTH ** scale, LONGEST_S * scale)) {
    lengths.push(dt);
    sum += dt;
  }
  const steps = lengths.length;
  const dt_s = Float64Array.from(lengths, (dt) => (dt * duration_s) / sum);
  let now = 0;
  const none = (): Float64Array => new Float64Array(steps);
  return {
    steps,
    dt_s,
    end_s: dt_s.map((dt) => (now += dt)),
    speed_mps: none(),
    power_W: none(),
    rise_W: none(),
    bend_W: none(),
    pressed: new Uint8Array(steps).fill(held ? 1 : 0),
  };
}

function stopOf(
  { profile }: Motion,
  { from, to, place }: Braking,
  end_s: Float64Array,
): LapPlan['stops'][number] {
  const { speed_mps, distance_m, time_s } = profile;
  return {
    fromStep: stepAfter(end_s, time_s[from]!),
    toStep: stepAfter(end_s, time_s[to]!),
    place,
    from_mps: speed_mps[from]!,
    to_mps: speed_mps[to]!,
    from_m: distance_m[from]!,
  };
}

/** The step that begins at a moment, which is the end of a step. */
const stepAfter = (end_s: Float64Array, t: number): number => (t === 0 ? 0 : end_s.indexOf(t) + 1);

function axlesOf({ profile, axles }: Motion, steps: LapSteps & { end_s: Float64Array }): LapPlan['axles'] {
  const own = (axle: Axle): LapSteps =>
    axles ? { ...steps, ...stepPowers(heatCurve(axles[axle], profile.time_s), steps.end_s) } : steps;
  return { front: own('front'), rear: own('rear') };
}

function fillSteps(
  { profile }: Motion,
  { curve, brakings, end_s }: { curve: HeatCurve; brakings: Braking[]; end_s: Float64Array },
) {
  const { time_s, distance_m, speed_mps } = profile;
  const steps = end_s.length;
  const column = (): Float64Array => new Float64Array(steps);
  const plan = {
    steps,
    dt_s: column(),
    speed_mps: column(),
    ...stepPowers(curve, end_s),
    pressed: new Uint8Array(steps),
    end_m: column(),
    endSpeed_mps: column(),
    end_s,
  };
  let last_s = 0;
  let last_m = 0;
  for (let n = 0; n < steps; n++) {
    const t = end_s[n]!;
    const node = nodeBefore(time_s, t);
    const w = Math.min(1, (t - time_s[node]!) / (time_s[node + 1]! - time_s[node]!));
    const at_m = distance_m[node]! + w * (distance_m[node + 1]! - distance_m[node]!);
    plan.dt_s[n] = t - last_s;
    plan.speed_mps[n] = (at_m - last_m) / (t - last_s);
    plan.end_m[n] = at_m;
    plan.endSpeed_mps[n] = speed_mps[node]! + w * (speed_mps[node + 1]! - speed_mps[node]!);
    last_s = t;
    last_m = at_m;
  }
  for (const { from, to } of brakings)
    plan.pressed.fill(1, stepAfter(end_s, time_s[from]!), stepAfter(end_s, time_s[to]!));
  return plan;
}
