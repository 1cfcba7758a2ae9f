/** What becomes of a remembered correction once the next file of its kind was read with it and without it. Pure. */
import type { TraceReading } from '../../engine/index.ts';

/** Used; set aside for this file; or dropped for good. */
export type Fate = 'used' | 'set aside' | 'dropped';

/** Something a person can work on: laps, or a question about them. */
const isReadable = ({ understood, columns }: TraceReading): boolean =>
  columns !== null || (understood !== null && (understood.laps.length > 0 || understood.question !== null));

/**
 * A correction that leaves nothing of a file that is readable without it was no correction. One that brings problems where
 * there were none was made for another file: it stays for the next one.
 */
export function fateOf(guessed: TraceReading, recalled: TraceReading): Fate {
  if (!isReadable(recalled) && isReadable(guessed)) return 'dropped';
  return recalled.problems.length > 0 && guessed.problems.length === 0 ? 'set aside' : 'used';
}
