/** The notes that the sentence may bear, in the order in which it has their numbers. */
import type { CornerResult } from '../../../../engine/index.ts';
import { otherSide } from '../../../display/corner.ts';
import { speakersOf, spokenShare, type Sentence } from '../../../display/sentence.ts';
import { keyOf } from '../../../display/note-key.ts';
import { driverNotes } from './driver-notes.ts';
import { markedLines } from './marking.ts';
import type { Told } from './note.ts';

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

/** Of the driver's line: each is none but at the corner that is spoken of. */
const driverKeys = ({ run: { result } }: Told): string[] =>
  Object.keys(driverNotes).flatMap((name) => result.corners.map((corner) => keyOf(name, corner)));

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
    ...driverKeys(told),
  ];
}

/** The same sentence with its numbers marked, and their keys in order. */
export function marked(sentence: Sentence, told: Told): { sentence: Sentence; keys: string[] } {
  const { lead, rest, doubt, driver } = sentence;
  const { lines, keys } = markedLines([lead, rest, doubt, driver], keysIn(told), told);
  const [first = [], second = [], third = [], last = []] = lines;
  return { sentence: { lead: first, rest: second, doubt: third, driver: last }, keys };
}
