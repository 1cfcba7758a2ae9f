import { describe, expect, it } from 'vitest';
import { isTooCold, isTooHot, judge, type LapFacts } from '../../engine/stint/judge.ts';
import type { LapSummary } from '../../engine/stint/result.ts';

const window = { bite_K: 670, facePeak_K: 920, bulk_K: 830, run_K: null };
const facts: LapFacts = {
  lap: 5,
  kind: 'push',
  faceMin_K: 650,
  faceMean_K: 750,
  faceMax_K: 900,
  facePeakPlace: 'turn 7',
  bulkMax_K: 800,
  bulkMean_K: 750,
  coldestStop_K: 700,
  coldestStopPlace: 'turn 1',
  hardStops: 4,
  belowBite: 0,
  belowBite_s: 0,
  aboveFacePeak_s: 0,
  aboveBulk_s: 0,
  largestDifference_K: 160,
};
const lap = (changes: Partial<LapSummary>): LapSummary => ({
  ...facts,
  tooHot: false,
  tooCold: false,
  in: true,
  ...changes,
});

// The window's definition: common practice, no source.
describe('a lap is too hot', () => {
  it.each([
    ['not when the face stays under its peak', {}, false],
    [
      'not when the face is over for half a second by up to 50 K',
      { faceMax_K: 969, aboveFacePeak_s: 0.5 },
      false,
    ],
    ['when the face is over for longer', { faceMax_K: 925, aboveFacePeak_s: 0.51 }, true],
    ['when the face is over by more', { faceMax_K: 971, aboveFacePeak_s: 0.1 }, true],
    ['when the bulk is over at all', { bulkMax_K: 830.1 }, true],
  ])('%s', (_, changes, expected) => {
    expect(isTooHot({ ...facts, ...changes }, window)).toBe(expected);
  });
});

describe('a lap is too cold', () => {
  const start = (under_K: number, until_s: number) => ({ under_K, until_s });
  it.each([
    ['not without a cold start', [], false],
    ['not with one start 40 K under that bites within half a second', [start(40, 0.5)], false],
    ['with one start further under', [start(41, 0.2)], true],
    ['with one start that bites late', [start(10, 0.6)], true],
    ['with two starts, however brief', [start(1, 0.1), start(1, 0.1)], true],
  ])('%s', (_, starts, expected) => {
    expect(isTooCold(facts, window, starts)).toBe(expected);
  });

  it('when its mean is under the run limit', () => {
    expect(isTooCold(facts, { ...window, run_K: 751 }, [])).toBe(true);
  });
});

describe('the verdict', () => {
  it('is hot alone where the cold start of a hot lap is forgiven', () => {
    const hot = lap({ faceMax_K: 940, belowBite: 1, coldestStop_K: 660, tooHot: true, in: false });
    expect(judge([hot], window, 4).status).toBe('hot');
  });

  it('is both where different laps fail either way', () => {
    const laps = [lap({ tooHot: true, in: false }), lap({ lap: 6, tooCold: true, in: false })];
    expect(judge(laps, window, 4)).toMatchObject({ status: 'both', firstLapOut: 5, countedLaps: 2 });
  });

  it('is not given without a hard stop, unless a lap is out all the same', () => {
    const soft = lap({ hardStops: 0, coldestStop_K: null, coldestStopPlace: null, in: true });
    expect(judge([soft], window, 4)).toMatchObject({
      status: 'not judged',
      reason: 'no counted lap has a hard stop',
    });
    expect(judge([{ ...soft, tooHot: true, in: false }], window, 4).status).toBe('hot');
    expect(judge([soft, lap({ hardStops: 1, in: true })], window, 4).status).toBe('in');
  });

  it('is not given without a lap that counts, whatever the laps did', () => {
    const verdict = judge([lap({ tooHot: true, in: null })], window, 4);
    expect(verdict).toMatchObject({
      status: 'not judged',
      reason: 'no lap counts: 1 push lap, judged from push lap 4',
    });
  });
});
