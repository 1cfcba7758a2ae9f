/** Which numbers of the sentence have a note, and where in it they stand. Its words are left as they are. */
import type { CornerResult } from '../../../../engine/index.ts';
import { otherSide } from '../../../display/corner.ts';
import { speakersOf, spokenShare, textOf, type Piece, type Sentence } from '../../../display/sentence.ts';
import { keyOf } from '../../../display/note-key.ts';
import type { Told } from './note.ts';
import { notesOf } from './notes.ts';

const verdictKeys = (corner: CornerResult): string[] => {
  const own = (...names: string[]): string[] => names.map((name) => keyOf(name, corner));
  switch (corner.verdict.status) {
    case 'hot':
      return own('firstOut', 'hot');
    case 'cold':
      return own('firstOut', 'cold');
    case 'both':
      return own('hot', 'cold', 'swing', 'width');
    case 'in':
      return own('nearest');
    case 'not judged':
      return [];
  }
};

/** What may be printed of a corner that leads; what is not is passed over. */
const SPAN = [
  'span',
  'fit',
  'spare',
  'noneSwing',
  'noneWidth',
  'leastBad',
  'missedHot',
  'missedCold',
  'gain',
];

/** Which way the runs of a corner fail, the way of most first, as the sentence has it. */
function failKeys(corner: CornerResult, { spread }: Told): string[] {
  const drawn = spread?.corners.find(({ axle, side }) => axle === corner.axle && side === corner.side);
  if (!drawn) return [];
  return (['hot', 'cold', 'both', 'notJudged'] as const)
    .toSorted((a, b) => drawn.count[b] - drawn.count[a])
    .map((way) => keyOf(`fails.${way}`, corner));
}

/** All that the sentence may print, in its order. */
function keysIn(told: Told): string[] {
  const { leader, others } = speakersOf(told.run.result);
  if (!leader) return [];
  const shared = (corner: CornerResult): string[] => {
    const share = spokenShare(corner, told.run);
    return share === null ? [] : [keyOf('blanked', corner, share)];
  };
  const across = (corner: CornerResult): string[] => {
    const other = otherSide(told.run.result, corner);
    return other ? [...shared(other), ...verdictKeys(other)] : [];
  };
  const sides = (corner: CornerResult): CornerResult[] =>
    [corner, otherSide(told.run.result, corner) ?? []].flat();
  const [first, ...more] = [leader, ...others].flatMap(sides);
  return [
    ...shared(leader),
    ...verdictKeys(leader),
    ...SPAN.map((name) => keyOf(name, leader)),
    ...across(leader),
    ...others.flatMap((corner) => [...shared(corner), ...verdictKeys(corner), keyOf('reach', corner)]),
    ...others.flatMap(across),
    ...[leader, ...others].map((corner) => keyOf('pull', corner)),
    keyOf('unknowns', leader),
    ...(first ? [keyOf('runs', first), ...failKeys(first, told)] : []),
    ...more.map((corner) => keyOf('alsoRuns', corner)),
  ];
}

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

function marksIn(text: string, told: Told): Mark[] {
  let from = 0;
  return notesOf(keysIn(told).join(';'), told).flatMap(({ key, note: { value } }) => {
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

/** The same sentence with its numbers marked, and their keys in order. */
export function marked(sentence: Sentence, told: Told): { sentence: Sentence; keys: string[] } {
  const lines = [sentence.lead, sentence.rest, sentence.doubt];
  const marks = marksIn(lines.map(textOf).join('\n'), told);
  let start = 0;
  const [lead = [], rest = [], doubt = []] = lines.map((pieces) => {
    const cutUp = cut(pieces, start, marks);
    start += textOf(pieces).length + 1;
    return cutUp;
  });
  return { sentence: { ...sentence, lead, rest, doubt }, keys: marks.map(({ key }) => key) };
}
