import { describe, expect, it } from 'vitest';
import type { CornerSensitivity, CornerSpread, Effect, Scenario, Spread } from '../../../engine/index.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { doubtSentence, DOUBT_LETTERS, type FoundSpread } from '../../../web/display/doubt-words.ts';
import { measureFirstNote } from '../../../web/display/measure-words.ts';
import { plainText, sentenceOf } from '../../../web/display/sentence.ts';
import { changed } from '../../support/stints.ts';
import { corner, resultOf } from '../../support/verdicts.ts';

const scenario = defaultScenario();
const drawn = (
  axle: 'front' | 'rear',
  stay: number,
  side: CornerSpread['side'] = 'both',
  ways: Partial<CornerSpread['count']> = { hot: 100 - stay },
): CornerSpread =>
  ({ axle, side, count: { in: stay, hot: 0, cold: 0, both: 0, notJudged: 0, ...ways } }) as CornerSpread;
const spread = (...corners: CornerSpread[]): Spread => ({ draws: 100, seed: 1, unknowns: 61, corners });

const front = corner('front');
const rear = corner('rear');
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const told = (found: FoundSpread, at: Scenario = scenario): string =>
  plain(doubtSentence([front, rear], found, at));
const counted = spread(drawn('front', 64), drawn('rear', 90));

describe('how sure the sentence is', () => {
  it('is being computed at first', () => {
    expect(told(null)).toBe('Its doubt is being computed; not calibrated.');
  });

  it('is the count of runs that stay in of each axle, and how those fail of the one that leads', () => {
    expect(told(counted)).toBe(
      'Not calibrated: with 61 unsure values varied, 64 of 100 runs keep the front discs in (36 too hot), 90 the rear.',
    );
  });

  it('tells every way that runs fail, and none where none does', () => {
    const torn = drawn('front', 1, 'both', { hot: 70, cold: 20, both: 8, notJudged: 1 });
    expect(told(spread(torn, drawn('rear', 100)))).toMatch(
      / 1 of 100 runs keeps the front discs in \(70 too hot, 20 too cold, 8 both, 1 not judged\), 100 the rear\.$/,
    );
  });

  it('counts both sides that differ, the one that leads first with the way that most fail', () => {
    const left = corner('front', { status: 'hot', firstLapOut: 5, hotMargin_K: -32 }, { side: 'left' });
    const right = corner('front', {}, { side: 'right' });
    const ways = { hot: 3, cold: 85 };
    const found = spread(drawn('front', 12, 'left', ways), drawn('front', 80, 'right'), drawn('rear', 100));
    const { doubt } = sentenceOf(resultOf(right, left, rear), scenario, { spans: [], spread: found });
    expect(plain(doubt[0]!.text)).toBe(
      'Not calibrated: with 61 unsure values varied, 12 of 100 runs keep the front left in (85 too cold), ' +
        '80 the right, 100 the rear.',
    );
  });

  it('counts the sides of the other axle too', () => {
    const left = corner('rear', {}, { side: 'left' });
    const right = corner('rear', { hotMargin_K: 60 }, { side: 'right' });
    const found = spread(drawn('front', 64), drawn('rear', 90, 'left'), drawn('rear', 95, 'right'));
    const { doubt } = sentenceOf(resultOf(front, left, right), scenario, { spans: [], spread: found });
    expect(doubt[0]!.text).toMatch(/, 90 the rear left, 95 the right\.$/);
  });

  it('says that it is not calibrated until a correction has a reason', () => {
    const corrected = changed({ 'correction.cooling.reason': 'paint of run 3' });
    expect(told(counted, corrected)).toMatch(/^With 61 unsure values varied, .* 90 the rear/);
    expect(told(null, corrected)).toBe('Its doubt is being computed.');
    const emptied = changed({ 'correction.cooling.reason': '' });
    expect(told(counted, emptied)).toMatch(/^Not calibrated: with /);
  });

  it('counts nothing where nothing is judged', () => {
    const unjudged = corner('front', { status: 'not judged', reason: 'no lap counts' });
    expect(doubtSentence([unjudged], counted, scenario)).toBe('Not calibrated.');
  });

  it('says why where it could not be computed', () => {
    expect(told('Its doubt could not be computed: broken.')).toBe(
      'Its doubt could not be computed: broken. Not calibrated.',
    );
  });

  it('says so where nothing is in doubt', () => {
    expect(told({ ...counted, unknowns: 0 })).toBe('Nothing here is in doubt; not calibrated.');
  });

  it('has its place kept while it is awaited', () => {
    const ways = drawn('front', 10, 'both', { hot: 13, cold: 48, both: 29 });
    const { length } = told(spread(ways, drawn('rear', 57)));
    expect(length).toBeLessThanOrEqual(DOUBT_LETTERS);
    expect(length).toBeGreaterThan(DOUBT_LETTERS - 5);
  });

  it('ends the sentence, before what the driver is told', () => {
    const said = plain(
      plainText(sentenceOf(resultOf(front, rear), scenario, { spans: [], spread: counted })),
    );
    expect(said).toMatch(/Rear 50 % stays in, .* at turn 3\. Not calibrated: .* 64 of 100 runs .*\.$/);
  });
});

describe('what to measure first', () => {
  const effect = { key: 'brakes.front.duct.recovery', moves_K: 28.6 } as Effect;
  const found = [
    { axle: 'front', side: 'both', measureFirst: effect },
    { axle: 'rear', side: 'both', measureFirst: null },
  ] as CornerSensitivity[];

  it('is named with what it moves', () => {
    expect(plain(measureFirstNote(found, front, counted))).toBe('Measure first: inlet recovery (±29 K).');
  });

  it('is being found once the runs are counted, where anything is in doubt', () => {
    const finding = 'Finding what to measure first.';
    expect(measureFirstNote(null, front, counted)).toBe(finding);
    expect(measureFirstNote(null, front, 'Its doubt could not be computed: broken.')).toBe(finding);
    expect(measureFirstNote(null, front, { ...counted, unknowns: 0 })).toBe('');
  });

  it('is left out before the runs are counted, where it is not known and where nothing matters', () => {
    expect(measureFirstNote(null, front, null)).toBe('');
    expect(measureFirstNote('What to measure first is not known: broken.', front, counted)).toBe('');
    expect(measureFirstNote(found, rear, counted)).toBe('');
  });
});
