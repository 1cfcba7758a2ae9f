/** How late a logged channel is against the motion that the speed shows. */
import { lineThrough, type Line } from './quick-channel.ts';

/** Delays are sought this far either way; filters and gateways of loggers delay by less. Common practice, no source [s] */
export const MOST_DELAY_S = 1;

/** Sought a little farther, so that a best place beyond the range is seen as such [s] */
const BEYOND_S = 0.2;
const STEP_S = 0.05;

export interface Delay {
  /** the channel comes this much after the motion [s] */
  late_s: number;
  /** the channel against the motion with the delay taken out */
  line: Line;
}

/**
 * The shift of a channel that explains most of a motion.
 *
 *     d = arg max R²(x(t + d), y(t))
 *
 * Tried at even steps; between them the parabola through the best three, so a fraction of a sample shows.
 * Source: delay by the peak of the cross-correlation, Knapp & Carter, IEEE Trans. ASSP 24 (1976) 320 (from memory).
 */
export function delayOf(time_s: Float64Array, channel: Float64Array, motion: Float64Array): Delay {
  const at = (late_s: number): Delay => ({
    late_s,
    line: lineThrough(shifted(time_s, channel, late_s), motion, () => true),
  });
  const side = Math.round((MOST_DELAY_S + BEYOND_S) / STEP_S);
  const tried = Array.from({ length: 2 * side + 1 }, (_, i) => at((i - side) * STEP_S));
  const share = (i: number): number => tried[i]?.line.explained || 0;
  const best = tried.reduce((most, _, i) => (share(i) > share(most) ? i : most), side);
  const [before, peak, after] = [share(best - 1), share(best), share(best + 1)];
  const bend = before - 2 * peak + after;
  const between = bend < 0 ? Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend))) : 0;
  return at(tried[best]!.late_s + between * STEP_S);
}

/** The channel as it was `late_s` later, so that it goes with the motion; what it never showed is held. */
export function shifted(
  time_s: Float64Array,
  channel: Float64Array,
  late_s: number,
  at = time_s,
): Float64Array {
  if (late_s === 0 && at === time_s) return channel;
  const last = time_s.length - 1;
  let row = 0;
  return at.map((t) => {
    const place = Math.min(time_s[last]!, Math.max(time_s[0]!, t + late_s));
    while (row < last - 1 && time_s[row + 1]! < place) row++;
    const w = (place - time_s[row]!) / (time_s[row + 1]! - time_s[row]!);
    return channel[row]! + w * (channel[row + 1]! - channel[row]!);
  });
}
