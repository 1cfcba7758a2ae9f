import type { LapCell, LapScale } from './lap-scale.ts';

export interface LapNumber {
  x: number;
  lap: number;
  counted: boolean;
  isHere: boolean;
}

const ROOM_PX = 20;

/** The lap numbers that have room; the lap under the cursor always, and never one on top of it. */
export function lapNumbers(x: LapScale, cursor_s: number): LapNumber[] {
  const step = [1, 2, 5, 10, 20].find((each) => each * x.lapWidth >= ROOM_PX) ?? 50;
  const here = cellAt(x, cursor_s);
  const isShown = (cell: LapCell): boolean =>
    cell === here ||
    ((cell.lap.lap % step === (step === 2 ? 1 : 0) || cell.lap.lap === 1) &&
      (!here || Math.abs(cell.middle - here.middle) >= ROOM_PX));
  return x.laps
    .filter(isShown)
    .map((cell) => ({ x: cell.middle, lap: cell.lap.lap, counted: cell.lap.counted, isHere: cell === here }));
}

/** The lap under way at a time, or none while the car stands. */
const cellAt = (x: LapScale, at_s: number): LapCell | undefined =>
  x.laps.find(({ start_s, end_s }) => at_s >= start_s && at_s < end_s);
