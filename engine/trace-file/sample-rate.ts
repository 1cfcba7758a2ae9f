/** Whether a lap is logged often enough to show how hard the car brakes. */
import { leastRate, sampleInterval, validatedRate } from '../circuit/sample-interval.ts';
import { durationOf, type MotionLog, type Span } from './motion-log.ts';
import { NBSP, quantity } from './words.ts';

/** Of the usual time between rows, rows that are left out here and there included. */
const ROOM = 1.05;

const every = (interval_s: number): string =>
  `a sample every ${quantity(interval_s, 's', interval_s < 0.95 ? 2 : 1)}`;

const intervalIn = (log: MotionLog, { from, to }: Span): number =>
  sampleInterval(log.speed_mps.subarray(from, to), durationOf(log, { from, to }));

/** Too slow to be driven. */
export function tooSlow(log: MotionLog, lap: Span): string[] {
  const interval_s = intervalIn(log, lap);
  if (!(interval_s * leastRate > ROOM)) return [];
  return [`${every(interval_s)} cannot show how hard the car brakes; log at 5${NBSP}Hz or more`];
}

/** Slow, but driven: what that costs is said. */
export function slowText(log: MotionLog, lap: Span): string[] {
  const interval_s = intervalIn(log, lap);
  if (!(interval_s * validatedRate > ROOM)) return [];
  return [
    `Only ${every(interval_s)}: it blurs how hard the car brakes, and brake heat may come out several percent too low; log at 5${NBSP}Hz or more`,
  ];
}
