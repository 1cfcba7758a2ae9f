/**
 * The uneven steps of one lap: few where little happens, and none across a brake going on, peaking or going off. The heat
 * of each step is exact, whatever its length.
 */
import type { LapSteps } from '../disc/lap-input.ts';
import { brakingsOf, type Braking } from './braking.ts';
import type { Motion } from './motion.ts';
import type { Axle } from './result.ts';
import { meanPowers } from './step-powers.ts';

/** First step after a brake goes on or off, growth from one to the next, and longest step in and between brakings [s] */
const FIRST_S = 0.02;
const GROWTH = 1.5;
const LONGEST_ON_S = 0.125;
const LONGEST_OFF_S = 2;
/** Longest step while the brake builds up to its peak: power there is anything but a straight line [s] */
const LONGEST_BUILD_S = 0.04;
/** Longest step in a short braking phase over its length: a touch of the brake has its peak within a few steps [-] */
const SHARE_OF_STOP = 0.08;

/** Mean power of all four brakes above which the pads count as pressed [W] */
const PRESSED_W = 2000;

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

/** Steps of a driven lap; `scale` shortens or lengthens all of them, to test the error they make. */
export function planLap(motion: Motion, scale: number, place: (distance_m: number) => string): LapPlan {
  const { profile, heat } = motion;
  const brakings = brakingsOf(motion);
  const ends: number[] = [];
  const stops: LapPlan['stops'] = [];
  let now = 0;
  const upTo = (until: number, longest: number): void => {
    for (const dt of fill(until - now, longest, scale)) ends.push((now += dt));
    if (until > now - 1e-9) now = until;
    if (ends.length > 0) ends[ends.length - 1] = now;
  };
  const timeAt = (node: number): number => profile.time_s[node]!;
  for (const braking of brakings) {
    upTo(timeAt(braking.from), LONGEST_OFF_S);
    const fromStep = ends.length;
    const share_s = SHARE_OF_STOP * (timeAt(braking.to) - timeAt(braking.from));
    const longest_s = Math.min(LONGEST_ON_S, Math.max(share_s, FIRST_S));
    upTo(timeAt(braking.peak), Math.min(longest_s, LONGEST_BUILD_S));
    // the last two intervals of the profile take the brake off, each in steps of its own
    upTo(timeAt(Math.max(braking.peak, braking.to - 2)), longest_s);
    upTo(timeAt(Math.max(braking.peak, braking.to - 1)), longest_s);
    upTo(timeAt(braking.to), longest_s);
    if (!braking.isTouch) stops.push(stopOf(motion, braking, fromStep, ends.length));
  }
  const duration_s = profile.time_s.at(-1)!;
  upTo(duration_s, LONGEST_OFF_S);
  const steps = fillSteps(motion, ends);
  return {
    ...steps,
    axles: axlesOf(motion, steps),
    duration_s,
    stops,
    topSpeed_mps: profile.speed_mps.reduce((top, v) => Math.max(top, v), 0),
    startSpeed_mps: profile.speed_mps[0]!,
    heat_J: heat.total_J,
    mass_kg: motion.mass_kg,
    place,
  };
}

/** Steps of a standing car. */
export function planStand(
  duration_s: number,
  held: boolean,
  scale: number,
): LapSteps & { end_s: Float64Array } {
  const dts = fill(duration_s, 5, scale);
  const steps = dts.length;
  let now = 0;
  return {
    steps,
    dt_s: Float64Array.from(dts),
    end_s: Float64Array.from(dts, (dt) => (now += dt)),
    speed_mps: new Float64Array(steps),
    powerStart_W: new Float64Array(steps),
    powerEnd_W: new Float64Array(steps),
    pressed: new Uint8Array(steps).fill(held ? 1 : 0),
  };
}

/** Lengths that grow from the first step to the longest and add up to the span. */
function fill(span_s: number, longest_s: number, scale: number): number[] {
  if (span_s <= 1e-9) return [];
  const lengths: number[] = [];
  let sum = 0;
  for (let dt = FIRST_S * scale; sum < span_s; dt = Math.min(dt * GROWTH ** scale, longest_s * scale)) {
    lengths.push(dt);
    sum += dt;
  }
  return lengths.map((dt) => (dt * span_s) / sum);
}

function stopOf(
  { profile }: Motion,
  { from, to, place }: Braking,
  fromStep: number,
  toStep: number,
): LapPlan['stops'][number] {
  const { speed_mps, distance_m } = profile;
  return {
    fromStep,
    toStep,
    place,
    from_mps: speed_mps[from]!,
    to_mps: speed_mps[to]!,
    from_m: distance_m[from]!,
  };
}

function axlesOf({ profile, axles }: Motion, steps: LapSteps & { end_s: Float64Array }): LapPlan['axles'] {
  const own = (axle: Axle): LapSteps =>
    axles ? { ...steps, ...meanPowers(axles[axle], profile.time_s, steps.end_s) } : steps;
  return { front: own('front'), rear: own('rear') };
}

function fillSteps({ profile, heat }: Motion, ends: number[]) {
  const steps = ends.length;
  const column = (): Float64Array => new Float64Array(steps);
  const { time_s, distance_m, speed_mps } = profile;
  const end_s = Float64Array.from(ends);
  const powers = meanPowers(heat, time_s, end_s);
  const plan = {
    steps,
    dt_s: column(),
    speed_mps: column(),
    ...powers,
    pressed: new Uint8Array(steps),
    end_m: column(),
    endSpeed_mps: column(),
    end_s,
  };
  let node = 0;
  let last = { t: 0, s: 0 };
  for (let n = 0; n < steps; n++) {
    const t = ends[n]!;
    while (node < time_s.length - 2 && time_s[node + 1]! < t) node++;
    const w = Math.min(1, (t - time_s[node]!) / (time_s[node + 1]! - time_s[node]!));
    const between = (a: Float64Array): number => a[node]! + w * (a[node + 1]! - a[node]!);
    const here = { t, s: between(distance_m) };
    const dt = t - last.t;
    plan.dt_s[n] = dt;
    plan.speed_mps[n] = (here.s - last.s) / dt;
    plan.end_m[n] = here.s;
    plan.endSpeed_mps[n] = between(speed_mps);
    plan.pressed[n] = (powers.powerStart_W[n]! + powers.powerEnd_W[n]!) / 2 > PRESSED_W ? 1 : 0;
    last = here;
  }
  return plan;
}
