import type { StintResult } from '../../engine/index.ts';
import { decimal, numberIn } from '../display/format.ts';
import { kmh, unitName } from '../display/units.ts';
import { indexAtTime } from './stint-lines.ts';

/** "lap 10, 48.5 seconds, 212 km/h": the cursor for ears. */
export function momentText({ laps, clock }: StintResult, time_s: number): string {
  const speed_mps = clock.speed_mps[indexAtTime(clock.time_s, time_s)] ?? 0;
  const speed = `${numberIn(kmh(speed_mps), 'km/h')} ${unitName('km/h')}`;
  const lap = laps.find(({ start_s, end_s }) => time_s >= start_s && time_s < end_s);
  if (lap) return `lap ${String(lap.lap)}, ${decimal(time_s - lap.start_s, 1)} seconds, ${speed}`;
  const last = laps.findLast(({ end_s }) => end_s <= time_s);
  return `standing after lap ${String(last?.lap ?? 0)}, ${decimal(time_s - (last?.end_s ?? 0))} seconds`;
}
