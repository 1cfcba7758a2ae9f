import { describe, expect, it } from 'vitest';
import { standingWords, type Standing } from '../../../web/frame/standing-words.ts';

const nothing: Standing = { isReady: false, savedAt_ms: null, problem: '', hasRestarted: false };
const at = new Date(2026, 5, 1, 9, 5).getTime();

describe('how things stand with the sheet', () => {
  it('is not told before there is anything to tell', () => {
    expect(standingWords(nothing)).toBe('');
  });

  it('tells that the network is not needed, and when the work was kept', () => {
    expect(standingWords({ ...nothing, isReady: true })).toBe('Ready without network');
    expect(standingWords({ ...nothing, savedAt_ms: at })).toBe('Saved 09:05');
    expect(standingWords({ ...nothing, isReady: true, savedAt_ms: at })).toBe(
      'Ready without network, saved 09:05',
    );
  });

  it('tells first what is wrong with keeping, then that the calculation was begun again', () => {
    const worst = { ...nothing, isReady: true, problem: 'Not kept', hasRestarted: true };
    expect(standingWords(worst)).toBe('Not kept');
    expect(standingWords({ ...worst, problem: '' })).toBe('Calculation was restarted, nothing is lost');
  });
});
