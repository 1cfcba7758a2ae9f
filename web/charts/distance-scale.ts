import type { Clock, Lap } from '../../engine/index.ts';
import { indexAtTime } from './stint-lines.ts';
import { valueScale } from './value-scale.ts';

/** One lap laid out by distance; a moment of the stint has its place on it, held at the lap's ends. */
export interface DistanceScale {
  left: number;
  right: number;
  xAt(distance_m: number): number;
  xOfSample(index: number): number;
  xOf(time_s: number): number;
  timeOf(x: number): number;
  distanceOf(time_s: number): number;
}

export function distanceScale(
  clock: Clock,
  lap: Lap,
  length_m: number,
  [left, right]: [number, number],
): DistanceScale {
  const { firstSample, lastSample } = lap;
  const line = valueScale(0, length_m, left, right);
  /** The line itself is both the end of one lap and the start of the next. */
  const distanceAt = (index: number): number => {
    const distance = clock.distance_m[index] ?? 0;
    if (index === firstSample && distance > length_m / 2) return 0;
    return index === lastSample && distance < length_m / 2 ? length_m : distance;
  };
  const timeAt = (index: number): number => clock.time_s[index] ?? 0;
  const between = (index: number, share: number, read: (at: number) => number): number => {
    const next = Math.min(lastSample, index + 1);
    return read(index) + Math.min(1, Math.max(0, share)) * (read(next) - read(index));
  };
  const distanceOf = (time_s: number): number => {
    const found = indexAtTime(clock.time_s, time_s);
    const index = Math.min(lastSample, Math.max(firstSample, found));
    return between(index, (time_s - timeAt(index)) / (timeAt(index + 1) - timeAt(index) || 1), distanceAt);
  };
  return {
    left,
    right,
    xAt: line.of,
    xOfSample: (index) => line.of(distanceAt(index)),
    xOf: (time_s) => line.of(distanceOf(time_s)),
    distanceOf,
    timeOf: (x) => {
      const wanted = line.invert(Math.min(right, Math.max(left, x)));
      let [low, high] = [firstSample, lastSample];
      while (low < high) {
        const middle = (low + high + 1) >> 1;
        if (distanceAt(middle) <= wanted) low = middle;
        else high = middle - 1;
      }
      const step = distanceAt(Math.min(lastSample, low + 1)) - distanceAt(low);
      return between(low, step > 0 ? (wanted - distanceAt(low)) / step : 0, timeAt);
    },
  };
}
