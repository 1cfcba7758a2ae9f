/** Lines that stand for the whole file: its beginning, where the names are, and pieces further on, where decimals show. */

const HEAD_LINES = 300;
const PIECE_LINES = 40;
const PLACES = [0.25, 0.5, 0.75, 0.97];

/** Blank lines count for nothing but are passed over up to here [characters] */
const FARTHEST = 4_000_000;

export interface Sample {
  /** With blank lines left out. */
  head: string[];
  /** From further on in the file. */
  pieces: string[];
}

/** Lines from a place on, blank ones left out, without cutting up the whole text. */
function linesFrom(text: string, start: number, most: number): string[] {
  const lines: string[] = [];
  const end = /\r\n?|\n/g;
  for (let from = start; from < text.length && lines.length < most && from < start + FARTHEST;) {
    end.lastIndex = from;
    const found = end.exec(text);
    const line = text.slice(from, found?.index);
    if (line.trim() !== '') lines.push(line);
    from = found ? end.lastIndex : text.length;
  }
  return lines;
}

export function sampleOf(text: string): Sample {
  const head = linesFrom(text, 0, HEAD_LINES);
  if (head.length < HEAD_LINES) return { head, pieces: [] };
  const pieces = PLACES.flatMap((share) =>
    linesFrom(text, Math.floor(text.length * share), PIECE_LINES + 1).slice(1),
  );
  return { head, pieces };
}
