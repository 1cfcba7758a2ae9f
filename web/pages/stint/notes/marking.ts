/** Which numbers of a text have a note, and where in it they stand. Its words are left as they are. */
import { keysOf } from '../../../display/note-key.ts';
import { textOf, type Piece } from '../../../display/sentence.ts';
import type { Told } from './note.ts';
import { notesOf } from './notes.ts';

interface Mark {
  key: string;
  from: number;
  to: number;
}

/** Where a printed value stands from a place on: never in the middle of another number. */
function placeOf(value: string, text: string, from: number): number {
  for (let at = text.indexOf(value, from); at >= 0; at = text.indexOf(value, at + 1)) {
    const isWhole = !/[\d.]/.test(text[at - 1] ?? '') && !/^\.?\d/.test(text.slice(at + value.length));
    if (isWhole) return at;
  }
  return -1;
}

function marksIn(text: string, keys: readonly string[], told: Told): Mark[] {
  let from = 0;
  return notesOf(keysOf(keys), told).flatMap(({ key, note: { value } }) => {
    const at = placeOf(value, text, from);
    if (at < 0) return [];
    from = at + value.length;
    return [{ key, from: at, to: from }];
  });
}

/** Pieces cut where a mark begins and ends. */
function cut(pieces: readonly Piece[], start: number, marks: readonly Mark[]): Piece[] {
  let at = start;
  return pieces.flatMap((piece) => {
    const [from, to] = [at, at + piece.text.length];
    at = to;
    const within = marks.filter((mark) => mark.from >= from && mark.to <= to);
    const parts: Piece[] = [];
    let done = from;
    const upTo = (end: number, about?: string): void => {
      if (end > done)
        parts.push({
          ...piece,
          text: piece.text.slice(done - from, end - from),
          ...(about ? { about } : {}),
        });
      done = end;
    };
    for (const mark of within) {
      upTo(mark.from);
      upTo(mark.to, mark.key);
    }
    upTo(to);
    return parts;
  });
}

/** The same lines with those numbers marked that the keys name in their order, and the keys of these. */
export function markedLines(
  lines: readonly Piece[][],
  keys: readonly string[],
  told: Told,
): { lines: Piece[][]; keys: string[] } {
  const marks = marksIn(lines.map(textOf).join('\n'), keys, told);
  let start = 0;
  const cutUp = lines.map((pieces) => {
    const parts = cut(pieces, start, marks);
    start += textOf(pieces).length + 1;
    return parts;
  });
  return { lines: cutUp, keys: marks.map(({ key }) => key) };
}
