/** The keys that move the one cursor, whichever drawing they are pressed on. */
import type { CornerResult, StintResult } from '../../engine/index.ts';
import { endOf, lapAt, nextMark, sampleAt } from './moments.ts';

export type Press = Pick<KeyboardEvent, 'key' | 'shiftKey'>;
/** What a drawing shows from end to end. */
export type Extent = 'lap' | 'stint';

const AHEAD = ['ArrowRight', 'ArrowUp', 'PageUp'];
const BACK = ['ArrowLeft', 'ArrowDown', 'PageDown'];
const PAGES = ['PageUp', 'PageDown'];
/** The line itself is the next lap's [s] */
const BEFORE_LINE_S = 1e-3;

/**
 * Where a key moves the cursor: arrows by one sample, with Shift or by page keys by one lap, M to the next hard stop and with
 * Shift back, Home and End to the ends of what is drawn. Null for other keys.
 */
export function movedBy(
  press: Press,
  from_s: number,
  { result, corner, extent }: { result: StintResult; corner: CornerResult; extent: Extent },
): number | null {
  const { key, shiftKey } = press;
  if (key === 'Home' || key === 'End') return endsOf(result, from_s, extent)[key === 'Home' ? 0 : 1];
  if (key.toLowerCase() === 'm') {
    const starts = corner.stops.filter(({ hard }) => hard).map(({ start_s }) => start_s);
    return nextMark(starts, from_s, shiftKey ? -1 : 1) ?? from_s;
  }
  const direction = AHEAD.includes(key) ? 1 : BACK.includes(key) ? -1 : 0;
  if (direction === 0) return null;
  return shiftKey || PAGES.includes(key)
    ? lapOn(result, from_s, direction)
    : sampleOn(result, from_s, direction);
}

function endsOf(result: StintResult, at_s: number, extent: Extent): [start_s: number, end_s: number] {
  const lap = extent === 'lap' ? lapAt(result.laps, at_s) : undefined;
  return lap ? [lap.start_s, lap.end_s - BEFORE_LINE_S] : [0, endOf(result)];
}

function sampleOn({ clock: { time_s } }: StintResult, from_s: number, direction: 1 | -1): number {
  const index = sampleAt(time_s, from_s) + direction;
  return time_s[Math.min(time_s.length - 1, Math.max(0, index))] ?? 0;
}

/** The same share of the lap before or after; beyond the last lap the end of the stint. */
function lapOn(result: StintResult, from_s: number, direction: 1 | -1): number {
  const { laps } = result;
  const place = laps.findIndex(({ end_s }) => from_s < end_s);
  const from = laps[place < 0 ? laps.length - 1 : place];
  const to = laps[(place < 0 ? laps.length : place) + direction];
  if (!from || !to) return direction > 0 ? endOf(result) : 0;
  const share = place < 0 ? 0 : (from_s - from.start_s) / (from.end_s - from.start_s);
  return to.start_s + share * (to.end_s - to.start_s);
}
