/** The key of a number: a quantity, the corner it is of and what else tells it from others. An element that bears it has a note. */
import type { CornerResult } from '../../engine/index.ts';

type Place = Pick<CornerResult, 'axle' | 'side'>;

/** "hot|front|both", "lap.faceMax|rear|left|10" */
export const keyOf = (quantity: string, { axle, side }: Place, ...more: (string | number)[]): string =>
  [quantity, axle, side, ...more].join('|');

/** Several notes in one. */
export const keysOf = (keys: readonly string[]): string => keys.join(';');
