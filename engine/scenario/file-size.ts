/** How large a file of measurements may be: larger ones are refused before they are read. */

/** An hour at 1 kHz with a few columns; beyond it a page would run out of memory [bytes] */
const LARGEST = 50e6;

/** One sentence why a file of this size is not read; empty where it can be [bytes]. */
export const tooLarge = (size: number): string =>
  size > LARGEST ? `file: expected at most ${LARGEST / 1e6} MB, got ${Math.ceil(size / 1e6)} MB` : '';
