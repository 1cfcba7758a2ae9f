import { describe, expect, it } from 'vitest';
import type { CornerSensitivity, CornerSpread, Effect, Scenario, Spread } from '../../../engine/index.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import {
  doubtSentence,
  DOUBT_LETTERS,
  measureFirstNote,
  type FoundSpread,
} from '../../../web/display/doubt-words.ts';
import { plainText, sentenceOf } from '../../../web/display/sentence.ts';
import { changed } from '../../support/stints.ts';
import { corner, resultOf } from '../../support/verdicts.ts';

const scenario = defaultScenario();
const drawn = (axle: 'front' | 'rear', stay: number, side: CornerSpread['side'] = 'both'): CornerSpread =>
  ({ axle, side, count: { in: stay, hot: 100 - stay, cold: 0, both: 0, notJudged: 0 } }) as CornerSpread;
const spread = (...corners: CornerSpread[]): Spread =>
  ({ draws: 100, seed: 1, unknowns: 61, corners });

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

  it('is the count of draws that stay in, of the corner that leads and of the other', () => {
    expect(told(counted)).toBe(
      'In 64 of 100 draws of what we do not know the fronts stay in, in 90 the rears; not calibrated.',
    );
  });

  it('names sides that differ', () => {
    const left = corner('front', {}, { side: 'left' });
    const found = spread(drawn('front', 12, 'left'), drawn('front', 80, 'right'));
    expect(plain(doubtSentence([left], found, scenario))).toBe(
      'In 12 of 100 draws of what we do not know the front left stays in; not calibrated.',
    );
  });

  it('says that it is not calibrated until a correction has a reason', () => {
    const corrected = changed({ 'correction.cooling.reason': 'paint of run 3' });
    expect(told(counted, corrected)).toMatch(/in 90 the rears\.$/);
    expect(told(null, corrected)).toBe('Its doubt is being computed.');
    const emptied = changed({ 'correction.cooling.reason': '' });
    expect(told(counted, emptied)).toMatch(/not calibrated\.$/);
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
    expect(told(counted).length).toBeLessThanOrEqual(DOUBT_LETTERS);
  });

  it('ends the sentence, before what the driver is told', () => {
    const said = plain(
      plainText(sentenceOf(resultOf(front, rear), scenario, { spans: [], spread: counted })),
    );
    expect(said).toMatch(/Rear 50 % stays in, .* at turn 3\. In 64 of 100 draws .*; not calibrated\.$/);
  });
});

describe('what to measure first', () => {
  const effect = { key: 'brakes.front.duct.recovery', moves_K: 28.6 } as Effect;
  const found = [
    { axle: 'front', side: 'both', measureFirst: effect },
    { axle: 'rear', side: 'both', measureFirst: null },
  ] as CornerSensitivity[];

  it('is named with what it moves', () => {
    expect(plain(measureFirstNote(found, front))).toBe('Measure first: inlet recovery (±29 K).');
  });

  it('is left out while it is not known, and where nothing matters', () => {
    expect(measureFirstNote(null, front)).toBe('');
    expect(measureFirstNote('What to measure first is not known: broken.', front)).toBe('');
    expect(measureFirstNote(found, rear)).toBe('');
  });
});
