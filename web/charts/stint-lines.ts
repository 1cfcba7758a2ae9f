import type { CornerResult } from '../../engine/index.ts';
import { traceLine, type Point } from './columns.ts';
import type { LapScale } from './lap-scale.ts';
import type { ValueScale } from './value-scale.ts';

/** The lines of one corner over the laps: each lap is one point in the middle of its cell. */
export interface StintLines {
  peak: Point[];
  mean: Point[];
  /** Broken where a lap has no hard stop. */
  coldest: Point[][];
}

/** Another stint's laps, pinned for comparison, go where laps of the same number are now. */
export function stintLines(corner: CornerResult, x: LapScale, y: ValueScale): StintLines {
  const lines: StintLines = { peak: [], mean: [], coldest: [] };
  let isOpen = false;
  for (const summary of corner.laps) {
    const cell = x.laps.find(({ lap }) => lap.lap === summary.lap);
    if (!cell) continue;
    const at = (value_K: number): Point => ({ x: cell.middle, y: y.of(value_K) });
    lines.peak.push(at(summary.faceMax_K));
    lines.mean.push(at(summary.faceMean_K));
    if (summary.coldestStop_K !== null) {
      if (!isOpen) lines.coldest.push([]);
      lines.coldest.at(-1)?.push(at(summary.coldestStop_K));
    }
    isOpen = summary.coldestStop_K !== null;
  }
  return lines;
}

/** The face while the car stands, sample by sample: the hottest moment may come after the last lap. */
export function standLines(
  face_K: ArrayLike<number>,
  time_s: ArrayLike<number>,
  x: LapScale,
  y: ValueScale,
): Point[][] {
  return x.stands.map((stand) => {
    const first = indexAtTime(time_s, stand.start_s);
    const last = indexAtTime(time_s, stand.end_s);
    return traceLine(
      first,
      last,
      (i) => Math.max(stand.left, x.xOf(time_s[i] ?? 0)),
      (i) => y.of(face_K[i] ?? 0),
    );
  });
}

/** The last sample that is not after a time; the first one before all. */
export function indexAtTime(time_s: ArrayLike<number>, at_s: number): number {
  let low = 0;
  let high = time_s.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((time_s[middle] ?? 0) <= at_s) low = middle;
    else high = middle - 1;
  }
  return Math.max(0, low);
}
