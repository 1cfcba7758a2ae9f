/** The braking phases of a lap. */
import type { Corner } from '../circuit/layout.ts';
import type { Motion } from './motion.ts';

/** A stretch of a lap with the brakes on, by nodes of the profile. */
export interface Braking {
  from: number;
  to: number;
  /** Node after the interval of the highest power. */
  peak: number;
  place: string;
  /** Too little heat for a braking phase. */
  isTouch: boolean;
}

/** Power of all four brakes above which they count as on [W] */
const ON_W = 2000;
/** Two touches of the brake closer than this are one [s] */
const JOIN_S = 0.25;
/** Less heat than this is a touch of the brake and no braking phase; it is in the heat all the same [J] */
const LEAST_J = 4000;
/** Less than this has no steps of its own [J] */
const LEAST_TOUCH_J = 500;

/** All braking phases and touches of the brake of a lap in order. */
export function brakingsOf({ profile, heat, corners }: Motion): Braking[] {
  const { time_s, distance_m } = profile;
  const found: { from: number; to: number }[] = [];
  for (let i = 0; i < time_s.length - 1; i++) {
    if (heat.power_W[i]! <= ON_W) continue;
    const last = found.at(-1);
    if (last && time_s[i]! - time_s[last.to]! < JOIN_S) last.to = i + 1;
    else found.push({ from: i, to: i + 1 });
  }
  const heatOf = ({ from, to }: { from: number; to: number }): number =>
    heat.cumulative_J[to]! - heat.cumulative_J[from]!;
  return found
    .filter((one) => heatOf(one) > LEAST_TOUCH_J)
    .map(({ from, to }) => {
      let best = from;
      for (let i = from; i < to; i++) if (heat.power_W[i]! > heat.power_W[best]!) best = i;
      const place = placeOf(corners, distance_m[from]!, distance_m[to]!);
      return {
        from,
        to,
        peak: Math.min(Math.max(best, from + 1), to),
        place,
        isTouch: heatOf({ from, to }) <= LEAST_J,
      };
    });
}

/** The corner that a stretch of road leads into or lies in, or its distance from the line. */
export function placeOf(corners: Corner[], from_m: number, to_m: number): string {
  const inside = corners.find((corner) => corner.from_m <= to_m && to_m <= corner.to_m);
  const ahead = corners.find((corner) => corner.at_m >= from_m) ?? corners[0];
  return (inside ?? ahead)?.name ?? `${(from_m / 1000).toFixed(2)} km`;
}
