/**
 * What the driver does, moment by moment, as the engine's physics states it: between the nodes of the driven profile speed
 * runs straight in time, and the heat so far is the monotone cubic that keeps each interval's heat (Fritsch & Carlson), its
 * slopes at the nodes as `step-powers.ts` says. Written a second time, so that no step of the engine takes part.
 */
import type { Scenario } from '../../../engine/scenario/schema.ts';
import { brakingsOf } from '../../../engine/stint/braking.ts';
import { onBoard, tanksOf } from '../../../engine/stint/fuel.ts';
import { lapEnds, type Before } from '../../../engine/stint/lap-ends.ts';
import { legsOf } from '../../../engine/stint/legs.ts';
import { lapLength, motionOf, type Motion } from '../../../engine/stint/motion.ts';

/** A span of time in which nothing jumps: power is a parabola, speed a straight line, the pads are pressed or not. */
export interface Span {
  from_s: number;
  to_s: number;
  /** Of all four brakes at a time of the span [W] */
  power_W: (t: number) => number;
  speed_mps: (t: number) => number;
  pressed: boolean;
}

/** One lap, or one standing phase, its time from its own begin. */
export interface Stretch {
  leg: number;
  /** 0 where the car stands */
  lap: number;
  duration_s: number;
  /** Mass of this lap over that of its plan: the heat goes with it [-] */
  massRatio: number;
  spans: Span[];
}

/** The whole stint in clear air. */
export function stretchesOf(scenario: Scenario): Stretch[] {
  const legs = legsOf(scenario);
  const tanks = tanksOf(legs, lapLength(legs[0]!.scenario));
  const stretches: Stretch[] = [];
  let lap = 0;
  let before: Before | null = null;
  legs.forEach((leg, index) => {
    if (leg.gap.share > 0) throw new Error('the reference knows clear air only');
    if (leg.kind === 'stand') {
      stretches.push(standing(index, leg.duration_s, leg.brakeHeld));
      before = { stood: true, end_mps: 0 };
      return;
    }
    const massAfter = (laps: number): number => leg.scenario.car.mass_kg + onBoard(tanks[index]!, laps);
    const mass_kg = massAfter(leg.laps / 2);
    const known = new Map<string, Motion>();
    for (let i = 0; i < leg.laps; i++) {
      lap++;
      const ends = lapEnds(legs, { leg: index, lap: i }, before);
      const key = JSON.stringify(ends);
      const { kind, gap } = leg;
      const motion = known.get(key) ?? motionOf({ kind, scenario: leg.scenario, gap, mass_kg, ends });
      known.set(key, motion);
      if (motion.axles) throw new Error('the reference knows one balance for the whole lap only');
      before = { stood: false, end_mps: motion.profile.speed_mps.at(-1)! };
      const { spans, duration_s } = lapOf(motion);
      stretches.push({ leg: index, lap, duration_s, massRatio: massAfter(i + 0.5) / mass_kg, spans });
    }
  });
  return stretches;
}

function standing(leg: number, duration_s: number, held: boolean): Stretch {
  const still = { from_s: 0, to_s: duration_s, power_W: () => 0, speed_mps: () => 0, pressed: held };
  return { leg, lap: 0, duration_s, massRatio: 1, spans: [still] };
}

function lapOf(motion: Motion): { spans: Span[]; duration_s: number } {
  const { profile, heat } = motion;
  const brakings = brakingsOf(motion);
  const { time_s: t, speed_mps: v } = profile;
  const intervals = t.length - 1;
  const length = (i: number): number => t[i + 1]! - t[i]!;
  const mean = (i: number): number => (heat.cumulative_J[i + 1]! - heat.cumulative_J[i]!) / length(i);
  const atNode = (i: number): number => {
    if (i === 0) return mean(0);
    if (i === intervals) return mean(intervals - 1);
    const weighed = (mean(i - 1) * length(i) + mean(i) * length(i - 1)) / (length(i - 1) + length(i));
    return Math.min(weighed, 3 * mean(i - 1), 3 * mean(i));
  };
  const spans: Span[] = [];
  for (let i = 0; i < intervals; i++) {
    const [from_s, to_s, h] = [t[i]!, t[i + 1]!, length(i)];
    // power a + b w + c w² over the share w of the interval: both ends met, and the mean
    const [a, end] = [atNode(i), atNode(i + 1)];
    const c = 3 * (a + end - 2 * mean(i));
    const b = end - a - c;
    const power_W = (at: number): number => {
      const w = (at - from_s) / h;
      return a + w * (b + w * c);
    };
    const speed_mps = (at: number): number => v[i]! + ((at - from_s) / h) * (v[i + 1]! - v[i]!);
    const pressed = brakings.some(({ from, to }) => from <= i && i < to);
    spans.push({ from_s, to_s, power_W, speed_mps, pressed });
  }
  return { spans, duration_s: t.at(-1)! };
}
