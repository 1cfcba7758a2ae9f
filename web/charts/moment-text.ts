import type { StintResult } from '../../engine/index.ts';
import { decimal } from '../display/format.ts';
import { kmh } from '../display/units.ts';
import { indexAtTime } from './stint-lines.ts';

/** "lap 10, 48.5 seconds, 212 km/h": the cursor for ears. */
export function momentText({ laps, clock }: StintResult, time_s: number): string {
  const speed_mps = clock.speed_mps[indexAtTime(clock.time_s, time_s)] ?? 0;
  const speed = `${decimal(kmh(speed_mps))} km/h`;
  const lap = laps.find(({ start_s, end_s }) => time_s >= start_s && time_s < end_s);
  if (lap) return `lap ${String(lap.lap)}, ${decimal(time_s - lap.start_s, 1)} seconds, ${speed}`;
  const last = laps.findLast(({ end_s }) => end_s <= time_s);
  return `standing after lap ${String(last?.lap ?? 0)}, ${decimal(time_s - (last?.end_s ?? 0))} seconds`;
}

const PAGES = ['PageUp', 'PageDown'];

/** Where a key moves the cursor: arrows by one sample, with Shift or by page keys by one lap; null for other keys. */
export function stepped(
  { laps, clock }: StintResult,
  time_s: number,
  key: string,
  isShift: boolean,
): number | null {
  const isAhead = ['ArrowRight', 'ArrowUp', 'PageUp'].includes(key);
  const isBack = ['ArrowLeft', 'ArrowDown', 'PageDown'].includes(key);
  if (!isAhead && !isBack) return null;
  const [first, last] = [clock.time_s[0] ?? 0, clock.time_s.at(-1) ?? 0];
  if (!isShift && !PAGES.includes(key)) {
    const index = indexAtTime(clock.time_s, time_s) + (isAhead ? 1 : -1);
    return clock.time_s[index] ?? (isAhead ? last : first);
  }
  const place = laps.findIndex(({ end_s }) => time_s < end_s);
  const from = laps[place < 0 ? laps.length - 1 : place];
  const to = laps[(place < 0 ? laps.length : place) + (isAhead ? 1 : -1)];
  if (!from || !to) return isAhead ? last : first;
  const share = place < 0 ? 0 : (time_s - from.start_s) / (from.end_s - from.start_s);
  return to.start_s + share * (to.end_s - to.start_s);
}
