/** Notes on what a verdict says: margins, swing, the hottest and the coldest, the lap it speaks of, the blanking. */
import type { CornerResult, LapSummary, Verdict } from '../../../../engine/index.ts';
import { kelvins, level, levelStep, NBSP } from '../../../display/format.ts';
import { blankNote } from './blank-notes.ts';
import { extremeLine, lessLine, RUN, SUPPLIER, type Line, type Maker } from './note.ts';

const WINDOW = 'The window';
export const JUDGED = `${SUPPLIER}; ${RUN}`;

const lapOf = ({ laps }: CornerResult, lap: number): LapSummary | undefined =>
  laps.find((each) => each.lap === lap);

const where = (place: string, lap: number): string => `${place && `${place}, `}lap${NBSP}${lap}`;

/** The laps that count; all where none does, as the judge has it. */
function judged({ laps }: CornerResult): LapSummary[] {
  const counted = laps.filter((lap) => lap.in !== null);
  return counted.length > 0 ? counted : laps;
}

export function hotLine({ window }: CornerResult, lap: LapSummary, limit: Verdict['hotLimit']): Line {
  return limit === 'bulk'
    ? lessLine('T bulk limit − T bulk', window.bulk_K, lap.bulkMax_K)
    : lessLine('T face peak − T face', window.facePeak_K, lap.faceMax_K);
}

export function coldLine(
  { window }: CornerResult,
  lap: LapSummary,
  limit: Verdict['coldLimit'],
): Line | null {
  if (limit === 'run')
    return window.run_K === null ? null : lessLine('T mean of the lap − T run', lap.bulkMean_K, window.run_K);
  return lap.coldestStop_K === null ? null : lessLine('T start − T bite', lap.coldestStop_K, window.bite_K);
}

const hot: Maker = ({ corner }) => {
  const { hotMargin_K, hotLimit, hotPlace, hotLap } = corner.verdict;
  const lap = lapOf(corner, hotLap);
  if (!lap) return null;
  const what =
    hotLimit === 'bulk'
      ? 'bulk’s limit less the hottest mean of the cheek'
      : 'face peak less the hottest face';
  return {
    name: hotMargin_K < 0 ? 'too hot by' : 'from too hot',
    value: kelvins(hotMargin_K),
    what: `The ${what} on the laps that count: ${where(hotPlace, hotLap)}. Below zero it is past the limit.`,
    lines: [hotLine(corner, lap, hotLimit)],
    source: JUDGED,
    model: WINDOW,
  };
};

const cold: Maker = ({ corner }) => {
  const { coldMargin_K, coldLimit, coldPlace, coldLap } = corner.verdict;
  const lap = lapOf(corner, coldLap);
  const line = lap && coldLine(corner, lap, coldLimit);
  if (!line) return null;
  const what =
    coldLimit === 'run'
      ? 'lowest mean of a lap less the run limit'
      : 'coldest start of a hard stop less bite';
  return {
    name: coldMargin_K < 0 ? 'too cold by' : 'from too cold',
    value: kelvins(coldMargin_K),
    what: `The ${what} on the laps that count: ${where(coldPlace, coldLap)}. Below zero it is past the limit.`,
    lines: [line],
    source: JUDGED,
    model: WINDOW,
  };
};

/** Whichever fails first. */
const nearest: Maker = (about, told) =>
  (about.corner.verdict.hotMargin_K <= about.corner.verdict.coldMargin_K ? hot : cold)(about, told);

const swing: Maker = ({ corner }) => {
  const { swing_K, facePeak_K, coldestStop_K } = corner.verdict;
  if (swing_K === null || coldestStop_K === null) return null;
  return {
    name: 'swing',
    value: kelvins(swing_K),
    what: 'From the coldest start of a hard stop to the hottest face, on the laps that count; too wide cracks discs.',
    lines: [lessLine('T hottest face − T coldest start', facePeak_K, coldestStop_K)],
    source: RUN,
    model: WINDOW,
  };
};

const width: Maker = ({ corner: { window } }) => ({
  name: 'width of the window',
  value: kelvins(window.facePeak_K - window.bite_K),
  what: 'From bite to face peak: no swing wider than this fits.',
  lines: [lessLine('T face peak − T bite', window.facePeak_K, window.bite_K)],
  source: SUPPLIER,
  model: WINDOW,
});

const peak: Maker = ({ corner }) => ({
  name: 'face peak',
  value: level(corner.verdict.facePeak_K),
  what: 'The hottest that the rubbed face gets on the laps that count, lap by lap.',
  lines: [
    extremeLine(
      'T = max of the laps’ face peaks',
      'max',
      judged(corner).map(({ faceMax_K }) => faceMax_K),
      levelStep(),
    ),
  ],
  source: RUN,
  model: WINDOW,
});

const coldest: Maker = ({ corner }) => {
  const { coldestStop_K } = corner.verdict;
  const starts_K = judged(corner).flatMap((lap) => lap.coldestStop_K ?? []);
  if (coldestStop_K === null) return null;
  return {
    name: 'coldest stop',
    value: level(coldestStop_K),
    what: 'The coldest that the face is as a hard stop starts, on the laps that count, lap by lap.',
    lines: [extremeLine('T = min of the laps’ coldest starts', 'min', starts_K, levelStep())],
    source: RUN,
    model: WINDOW,
  };
};

/** How far the lap is past the limit that puts it out. */
function pastLine(corner: CornerResult, lap: LapSummary): Line | null {
  const { window } = corner;
  if (lap.tooHot && lap.faceMax_K > window.facePeak_K)
    return lessLine('T face − T face peak', lap.faceMax_K, window.facePeak_K);
  if (lap.tooHot) return lessLine('T bulk − T bulk limit', lap.bulkMax_K, window.bulk_K);
  if (lap.coldestStop_K !== null && lap.coldestStop_K < window.bite_K)
    return lessLine('T bite − T start', window.bite_K, lap.coldestStop_K);
  return window.run_K === null ? null : lessLine('T run − T mean', window.run_K, lap.bulkMean_K);
}

const firstOut: Maker = ({ corner }) => {
  const { firstLapOut } = corner.verdict;
  const lap = firstLapOut === null ? undefined : lapOf(corner, firstLapOut);
  const line = lap && pastLine(corner, lap);
  if (!lap || !line) return null;
  return {
    name: 'first lap out',
    value: `lap${NBSP}${lap.lap}`,
    what: 'The first lap that counts and is past a limit by more than a short moment; by so much it is.',
    lines: [line],
    source: JUDGED,
    model: WINDOW,
  };
};

const blanked: Maker = ({ corner, more }, { run }) => {
  const share = Number(more[0]);
  const duct = run.scenario.brakes[corner.axle].duct;
  if (!duct) return null;
  return blankNote(share, duct, { name: 'blanking', setBy: '; set by hand, or by a phase of the stint' });
};

export const verdictNotes = { hot, cold, nearest, swing, width, peak, coldest, firstOut, blanked };
