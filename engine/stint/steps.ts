/**
 * The uneven steps of one lap: few where little happens, and none across a brake going on, peaking or going off. The heat
 * of each step is exact, whatever its length.
 */
import type { LapSteps } from '../disc/lap-input.ts';
import { brakingsOf, type Braking } from './braking.ts';
import type { Motion } from './motion.ts';

/** First step after a brake goes on or off, growth from one to the next, and longest step in and between brakings [s] */
const FIRST_S = 0.03;
const GROWTH = 1.5;
const LONGEST_ON_S = 0.15;
const LONGEST_OFF_S = 2;

/** Mean power of all four brakes above which the pads count as pressed [W] */
const PRESSED_W = 2000;

export interface LapPlan extends LapSteps {
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
    upTo(timeAt(braking.peak), LONGEST_ON_S);
    upTo(timeAt(braking.to), LONGEST_ON_S);
    stops.push(stopOf(motion, braking, fromStep, ends.length));
  }
  const duration_s = profile.time_s.at(-1)!;
  upTo(duration_s, LONGEST_OFF_S);
  return {
    ...fillSteps(motion, ends),
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

function fillSteps({ profile, heat }: Motion, ends: number[]) {
  const steps = ends.length;
  const column = (): Float64Array => new Float64Array(steps);
  const plan = {
    steps,
    dt_s: column(),
    speed_mps: column(),
    powerStart_W: column(),
    powerEnd_W: column(),
    pressed: new Uint8Array(steps),
    end_m: column(),
    endSpeed_mps: column(),
    end_s: Float64Array.from(ends),
  };
  const { time_s, distance_m, speed_mps } = profile;
  let node = 0;
  let last = { t: 0, s: 0, heat: 0, power: powerAt(heat.power_W, 0, 0) };
  for (let n = 0; n < steps; n++) {
    const t = ends[n]!;
    while (node < time_s.length - 2 && time_s[node + 1]! < t) node++;
    const w = Math.min(1, (t - time_s[node]!) / (time_s[node + 1]! - time_s[node]!));
    const between = (a: Float64Array): number => a[node]! + w * (a[node + 1]! - a[node]!);
    const here = {
      t,
      s: between(distance_m),
      heat: between(heat.cumulative_J),
      power: powerAt(heat.power_W, node, w),
    };
    const dt = t - last.t;
    const mean = Math.max(0, (here.heat - last.heat) / dt);
    const half = Math.max(-mean, Math.min(mean, (here.power - last.power) / 2));
    plan.dt_s[n] = dt;
    plan.speed_mps[n] = (here.s - last.s) / dt;
    plan.powerStart_W[n] = mean - half;
    plan.powerEnd_W[n] = mean + half;
    plan.end_m[n] = here.s;
    plan.endSpeed_mps[n] = between(speed_mps);
    plan.pressed[n] = mean > PRESSED_W ? 1 : 0;
    last = here;
  }
  return plan;
}

/** Power at a place between nodes, from the means of the intervals around it. */
function powerAt(power_W: Float64Array, node: number, w: number): number {
  const at = (i: number): number => power_W[Math.min(Math.max(i, 0), power_W.length - 2)]!;
  return w < 0.5
    ? at(node) * (0.5 + w) + at(node - 1) * (0.5 - w)
    : at(node) * (1.5 - w) + at(node + 1) * (w - 0.5);
}
