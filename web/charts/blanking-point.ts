/** A place on the map of all blankings, and how pointer and keys move it. */
import type { BlankingView } from './blanking-view.ts';
import type { Point } from './columns.ts';
import type { Box } from './place-labels.ts';

export interface BlankingPoint {
  /** Place of the lap in the stint's list. */
  place: number;
  /** Whole percent of the mouth. */
  blanking_pct: number;
}

const STEP_PCT = 5;
const FINE_PCT = 1;

const between = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));

/** How far beside the frame a hand still means its edge [px] */
const SLACK_PX = 10;

export const isOver = ({ left, top, width, height }: Box, { x, y }: Point): boolean =>
  x >= left - SLACK_PX && x <= left + width + SLACK_PX && y >= top - SLACK_PX && y <= top + height + SLACK_PX;

/** The lap and the whole percent nearest to a place in the drawing. */
export function pointAt({ x, y }: Pick<BlankingView, 'x' | 'y'>, at: Point): BlankingPoint {
  const far = x.laps.map(({ middle }) => Math.abs(middle - at.x));
  return {
    place: Math.max(0, far.indexOf(Math.min(...far))),
    blanking_pct: between(0, Math.round(y.invert(at.y)), 100),
  };
}

/** Where an arrow key takes it, or null for any other key. Up and down go to whole steps. */
export function movedPoint(
  { place, blanking_pct }: BlankingPoint,
  { key, shiftKey }: Pick<KeyboardEvent, 'key' | 'shiftKey'>,
  laps: number,
): BlankingPoint | null {
  const step = shiftKey ? FINE_PCT : STEP_PCT;
  const to = (next: number, pct: number): BlankingPoint => ({
    place: between(0, next, laps - 1),
    blanking_pct: between(0, pct, 100),
  });
  switch (key) {
    case 'ArrowLeft':
      return to(place - 1, blanking_pct);
    case 'ArrowRight':
      return to(place + 1, blanking_pct);
    case 'ArrowUp':
      return to(place, step * (Math.floor(blanking_pct / step) + 1));
    case 'ArrowDown':
      return to(place, step * (Math.ceil(blanking_pct / step) - 1));
    case 'Home':
      return to(0, blanking_pct);
    case 'End':
      return to(laps - 1, blanking_pct);
    default:
      return null;
  }
}
