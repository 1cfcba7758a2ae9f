/** Whether a lap is logged often enough to show how hard the car brakes. */
import { isTooSlow, sampleInterval, slowSentence } from '../circuit/sample-interval.ts';
import { durationOf, type MotionLog, type Span } from './motion-log.ts';
import { NBSP, quantity } from './words.ts';

const intervalIn = (log: MotionLog, { from, to }: Span): number =>
  sampleInterval(log.speed_mps.subarray(from, to), durationOf(log, { from, to }));

/** Too slow to be driven. */
export function tooSlow(log: MotionLog, lap: Span): string[] {
  const interval_s = intervalIn(log, lap);
  if (!isTooSlow(interval_s)) return [];
  const every = quantity(interval_s, 's', interval_s < 0.95 ? 2 : 1);
  return [`a sample every ${every} cannot show how hard the car brakes; log at 5${NBSP}Hz or more`];
}

/** Slow, but driven: what that costs is said. */
export const slowText = (log: MotionLog, lap: Span): string[] =>
  [slowSentence(intervalIn(log, lap))].filter((sentence) => sentence !== '');
