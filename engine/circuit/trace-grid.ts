/** The nodes of a clean trace, and what a log says of the intervals between them. */
import type { Phase } from './brake-log.ts';

/** A node this near to the end of a braking phase gives way to it [s] */
const NEAR_S = 0.01;

/** Even steps over the span of a log, with a node at each end of a braking phase. */
export function gridOf(time_s: Float64Array, step_s: number, phases: Phase[]): Float64Array {
  const start_s = time_s[0]!;
  const span_s = time_s.at(-1)! - start_s;
  const n = Math.max(2, Math.round(span_s / step_s));
  const even = Float64Array.from({ length: n + 1 }, (_, i) => start_s + (i * span_s) / n);
  const ends = phases
    .flatMap(({ from_s, to_s }) => [from_s, to_s])
    .filter((t) => t > start_s + NEAR_S && t < start_s + span_s - NEAR_S);
  if (ends.length === 0) return even;
  const free = even.filter((t, i) => i === 0 || i === n || ends.every((end) => Math.abs(end - t) > NEAR_S));
  return Float64Array.of(...free, ...ends).sort();
}

/** 1 for each interval of the nodes that lies in a braking phase; the last entry repeats the one before. */
export function pressedOn(at: Float64Array, phases: Phase[]): Uint8Array {
  let next = 0;
  const pressed = Uint8Array.from(at, (t, i) => {
    const middle = (t + (at[i + 1] ?? t)) / 2;
    while (next < phases.length - 1 && phases[next]!.to_s < middle) next++;
    const phase = phases[next];
    return phase && phase.from_s < middle && middle < phase.to_s ? 1 : 0;
  });
  pressed[at.length - 1] = pressed[at.length - 2]!;
  return pressed;
}

/** Both lines at the middle of each interval, over their own means while the brakes are on. */
export function linesOn(log: {
  time_s: Float64Array;
  at: Float64Array;
  pressed: Uint8Array;
  front_Pa: Float64Array;
  rear_Pa: Float64Array;
}): { front: Float64Array; rear: Float64Array } {
  const { time_s, at, pressed } = log;
  const overMean = (values: Float64Array): Float64Array => {
    let row = 0;
    let [sum, duration_s] = [0, 0];
    const middle = at.map((t, i) => {
      const dt = (at[i + 1] ?? t) - t;
      const place = t + dt / 2;
      while (row < time_s.length - 2 && time_s[row + 1]! < place) row++;
      const w = (place - time_s[row]!) / (time_s[row + 1]! - time_s[row]!);
      const value = values[row]! + w * (values[row + 1]! - values[row]!);
      if (pressed[i]) {
        sum += value * dt;
        duration_s += dt;
      }
      return value;
    });
    return sum > 0 ? middle.map((value) => (value * duration_s) / sum) : middle.fill(1);
  };
  return { front: overMean(log.front_Pa), rear: overMean(log.rear_Pa) };
}
