/** Notes on the draws, and on how far left and right part. */
import type { CornerSpread } from '../../../../engine/index.ts';
import { staysIn } from '../../../display/doubt-words.ts';
import { capital, kelvins, NBSP } from '../../../display/format.ts';
import { countLine, lessLine, RUN, type About, type Line, type Maker, type Note, type Told } from './note.ts';

const MODEL = 'Doubt';
const DRAWN =
  'whole runs of this stint with every unsure value drawn from its range, the same draws each time';

const WAYS = [
  ['in', 'in'],
  ['hot', 'too hot'],
  ['cold', 'too cold'],
  ['both', 'both'],
  ['notJudged', 'not judged'],
] as const;
type Way = (typeof WAYS)[number][0];

const drawnOf = ({ corner }: About, { spread }: Told): CornerSpread | undefined =>
  spread?.corners.find(({ axle, side }) => axle === corner.axle && side === corner.side);

/** All runs less those that came out otherwise. */
function restLine(drawn: CornerSpread, way: Way): Line {
  const others = WAYS.filter(([other]) => other !== way);
  return countLine(`all runs − ${others.map(([, words]) => words).join(' − ')}`, [
    staysIn(drawn).of,
    ...others.map(([other]) => drawn.count[other]),
  ]);
}

function runsNote(about: About, told: Told, valueOf: (drawn: CornerSpread) => string): Note | null {
  const drawn = drawnOf(about, told);
  if (!drawn) return null;
  return {
    name: 'runs that stay in',
    value: valueOf(drawn),
    what: 'How many of the runs keep all laps that count inside the window as it is fitted now. A count of 50 in 100 stands for 40 to 60.',
    lines: [restLine(drawn, 'in')],
    source: DRAWN,
    model: MODEL,
  };
}

/** "28 of 100", of the axle that leads. */
const runs: Maker = (about, told) =>
  runsNote(about, told, (drawn) => `${staysIn(drawn).runs} of${NBSP}${staysIn(drawn).of}`);
/** "96", of the others. */
const alsoRuns: Maker = (about, told) => runsNote(about, told, (drawn) => String(staysIn(drawn).runs));

const failed =
  (way: Exclude<Way, 'in'>, words: string): Maker =>
  (about, told) => {
    const drawn = drawnOf(about, told);
    if (!drawn || drawn.count[way] === 0) return null;
    return {
      name: `runs ${words}`,
      value: `${drawn.count[way]} ${words}`,
      what: `How many of the runs end ${words} on a lap that counts.`,
      lines: [restLine(drawn, way)],
      source: DRAWN,
      model: MODEL,
    };
  };

const unknowns: Maker = (_about, { spread }) =>
  spread && {
    name: 'unsure values',
    value: `${spread.unknowns} unsure values`,
    what: 'The entries of car, brakes and day that are a judgement: each has a least, a likely and a most, and a reason.',
    lines: [],
    source: 'entered beside each value, with its reason',
    model: MODEL,
  };

/** Left and right of an axle, where they part most. */
const pull: Maker = ({ corner }, { run: { result } }) => {
  const pull = result.pulls.find(({ axle }) => axle === corner.axle);
  if (!pull) return null;
  const { lap, at, place, hotter } = pull;
  const faceOf = (side: 'left' | 'right'): number | undefined => {
    const one = result.corners.find((each) => each.axle === corner.axle && each.side === side);
    return at === 'face peak'
      ? one?.laps.find((each) => each.lap === lap)?.faceMax_K
      : one?.stops.find((each) => each.lap === lap && each.place === place && each.hard)?.startFace_K;
  };
  const [high_K, low_K] = [faceOf(hotter), faceOf(hotter === 'left' ? 'right' : 'left')];
  if (high_K === undefined || low_K === undefined) return null;
  return {
    name: 'left and right part by',
    value: kelvins(pull.by_K),
    what: `The largest difference of the two faces on the laps that count: ${at === 'face peak' ? 'the peak' : `the start of a hard stop, ${place}`}, lap${NBSP}${lap}.`,
    lines: [lessLine(`${capital(hotter)} T − the other T`, high_K, low_K)],
    source: `${RUN}; from when on it pulls is practice, without a source`,
    model: 'The window',
  };
};

export const drawNotes = {
  runs,
  alsoRuns,
  unknowns,
  pull,
  ...Object.fromEntries(
    WAYS.slice(1).map(([way, words]) => [`fails.${way}`, failed(way as Exclude<Way, 'in'>, words)]),
  ),
};
