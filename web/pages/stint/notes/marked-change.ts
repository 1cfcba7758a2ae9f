/** The words on what changed against the pinned run, with their numbers marked. */
import type { CornerResult } from '../../../../engine/index.ts';
import { keyOf } from '../../../display/note-key.ts';
import type { Piece } from '../../../display/sentence.ts';
import { changes } from './change-notes.ts';
import { markedLines } from './marking.ts';
import type { Told } from './note.ts';

/** The same words in pieces, and the keys of those that have a note, in order. */
export function markedChange(
  words: string,
  corner: CornerResult,
  told: Told,
): { pieces: Piece[]; keys: string[] } {
  const names = changes(corner, told).map(({ name, from }) =>
    from ? keyOf('changed', corner, name) : keyOf('firstOut', corner),
  );
  const { lines, keys } = markedLines([[{ text: words }]], names, told);
  return { pieces: lines[0] ?? [], keys };
}
