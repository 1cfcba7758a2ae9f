/** The dots and squares in words. */
import type { CornerSpread, DrawnStint } from '../../engine/index.ts';
import { DOTS, type DotRow } from './dots.ts';
import { level, limit } from './format.ts';

/** "16 of 20 runs stay below 650 °C" */
export const hottestTitle = ({ good, limit_K }: DotRow): string =>
  `${good} of ${DOTS} runs ${good === 1 ? 'stays' : 'stay'} below ${limit(limit_K)}`;

/** "19 of 20 runs start every hard stop above 400 °C" */
export const coldestTitle = ({ good, limit_K }: DotRow): string =>
  `${good} of ${DOTS} runs ${good === 1 ? 'starts' : 'start'} every hard stop above ${limit(limit_K)}`;

/** "Of all 100 runs 82; 3 more pass it for a moment, which the window allows." Of the dots alone where nothing is to add. */
export function hottestNote({ runs, of }: DotRow, { count }: CornerSpread): string {
  const notHot = of - count.hot - count.both - count.notJudged;
  return exactly(runs, of, notHot, ['passes it', 'pass it'], 'by the bulk');
}

export function coldestNote({ runs, of }: DotRow, { count }: CornerSpread): string {
  const notCold = of - count.cold - count.both - count.notJudged;
  return exactly(runs, of, notCold, ['is below it', 'are below it'], 'by the mean of the lap');
}

/** The verdicts may forgive a moment, or know another limit. */
function exactly(
  runs: number,
  of: number,
  judged: number,
  [one, several]: readonly [string, string],
  other: string,
): string {
  const more = judged - runs;
  const why =
    more > 0
      ? `; ${more} more ${more === 1 ? one : several} for a moment, which the window allows`
      : more < 0
        ? `; of them ${-more} ${more === -1 ? 'fails' : 'fail'} ${other}`
        : '';
  return `Of all ${of} runs ${runs}${why}.`;
}

const STATUS: Record<DrawnStint['status'], string> = {
  in: 'stays in',
  hot: 'too hot',
  cold: 'too cold',
  both: 'too hot and too cold',
  'not judged': 'not judged',
};

/** "Run 7 of 100: face peak 660 °C, coldest stop 395 °C, too hot." */
export function drawnStintWords({ stints, hottest_K, coldest_K }: CornerSpread, at: number): string {
  const stint = stints[at];
  if (!stint) return '';
  const cold = coldest_K[at] ?? null;
  const stop = cold === null ? 'no hard stop' : `coldest stop ${level(cold)}`;
  return `Run ${at + 1} of ${stints.length}: face peak ${level(hottest_K[at] ?? 0)}, ${stop}, ${STATUS[stint.status]}.`;
}
