import { describe, expect, it } from 'vitest';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { withChanges } from '../../../engine/scenario/changes.ts';
import { refusal, typedNumber } from '../../../web/controls/typed-number.ts';
import { clockTime, decimal, kelvins, level, percent } from '../../../web/display/format.ts';
import { blankingValueText, conditionsLine, marginWords, stintTitle } from '../../../web/display/headings.ts';
import { lapVerdict } from '../../../web/display/lap-words.ts';
import { sampleResult } from '../../support/sample-result.ts';
import { corner } from '../../support/verdicts.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('numbers in print', () => {
  it('round a disc temperature to 5 °C', () => {
    expect(plain(level(273.15 + 682))).toBe('680 °C');
    expect(plain(level(273.15 + 683))).toBe('685 °C');
  });

  it('keep a difference in kelvin, without its sign', () => {
    expect(plain(kelvins(-32.4))).toBe('32 K');
    expect(plain(kelvins(0.3))).toBe('less than 1 K');
  });

  it('use a true minus and never write minus nought', () => {
    expect(decimal(-12)).toBe('\u221212');
    expect(decimal(-0.2)).toBe('0');
  });

  it('write a time as minutes and seconds', () => {
    expect(clockTime(96.44, 1)).toBe('1:36.4');
    expect(clockTime(59.96, 1)).toBe('1:00.0');
    expect(clockTime(65)).toBe('1:05');
  });

  it('part a number from its unit by a space that does not break', () => {
    expect(percent(70)).toBe('70\u00a0%');
  });
});

describe('a typed number', () => {
  it.each([
    ['60', 60],
    ['60 %', 60],
    ['12,5', 12.5],
    [' \u22125 °C', -5],
    ['.5', 0.5],
    ['', null],
    ['sixty', null],
    ['6 0x', null],
    ['1e3', null],
    ['1.2.3', null],
    ['1,200', null],
  ])('"%s" is %d', (text, value) => {
    expect(typedNumber(text, text.includes('%') ? '%' : '°C')).toBe(value);
  });

  it('that is nonsense is answered with the range and what stays', () => {
    expect(refusal('0 to 100 %', 'abc', '70 %')).toBe('Expected 0 to 100 %, got “abc”. 70 % stays.');
    expect(refusal('0 to 100 %', ' ', '70 %')).toContain('got nothing');
  });
});

describe('headings', () => {
  it('tell on how many of the counted laps the limit is passed', () => {
    const front = sampleResult({ cooling: 0.35 }).corners[0]!;
    expect(front.verdict.status).toBe('hot');
    expect(plain(stintTitle(front))).toMatch(
      /^Front face passes its 650 °C limit on (all|\w+ of) .*counted laps$/,
    );
  });

  it('speak of the one counted lap where there is one', () => {
    const { laps } = sampleResult({ cooling: 0.35 }).corners[0]!;
    const one = laps.filter((lap) => lap.in === false).slice(0, 1);
    const title = (status: 'hot' | 'cold' | 'both' | 'in'): string =>
      plain(stintTitle(corner('front', { status }, { laps: one })));
    expect(title('hot')).toMatch(/^Front face passes its \d+ °C limit on its one counted lap$/);
    expect(title('cold')).toMatch(/bite on its one counted lap$/);
    expect(title('both')).toBe('Front is too hot and too cold on its one counted lap');
    expect(title('in')).toMatch(/ on its one counted lap$/);
  });

  it('give the margin of a row of cells', () => {
    expect(plain(marginWords(corner('front')))).toBe('inside, 43 K to spare, swing 108 K');
    expect(plain(marginWords(corner('front', { status: 'hot', hotMargin_K: -12 })))).toBe(
      '12 K too hot, swing 108 K',
    );
  });

  it('call what the window forgives neither too hot nor too cold', () => {
    const brief = corner('front', { coldMargin_K: -3 });
    expect(plain(marginWords(brief))).toBe('inside, briefly 3 K under bite, swing 108 K');
    const over = corner('front', { hotMargin_K: -9 });
    expect(plain(marginWords(over))).toBe('inside, briefly 9 K over peak, swing 108 K');
  });

  it('tell a screen reader what a blanking means', () => {
    const front = sampleResult({ cooling: 0.9 }).corners[0]!;
    expect(plain(blankingValueText(32, front))).toMatch(
      /^32 percent blanked, 68 percent open; front \d+ °C to \d+ °C, [a-z ]+$/,
    );
    expect(blankingValueText(32, undefined)).toBe('32 percent blanked, 68 percent open');
  });

  it('put the verdict on a lap in words', () => {
    const { laps, window } = sampleResult().corners[0]!;
    const lap = {
      ...laps[10]!,
      faceMax_K: window.facePeak_K - 9,
      bulkMax_K: window.bulk_K - 9,
      belowBite: 0,
    };
    const verdict = (changes: object): string => lapVerdict({ ...lap, in: false, ...changes }, window);
    expect(verdict({ in: null })).toBe('not counted');
    expect(verdict({ in: true })).toBe('in');
    expect(verdict({ tooHot: true, faceMax_K: window.facePeak_K + 20 })).toBe('out: too hot');
    // one brief cold start is forgiven
    expect(verdict({ tooHot: true, faceMax_K: window.facePeak_K + 20, belowBite: 1 })).toBe('out: too hot');
    expect(verdict({ tooHot: true, bulkMax_K: window.bulk_K + 5, tooCold: true, belowBite: 1 })).toBe(
      'out: bulk too hot, too cold',
    );
  });

  it('name the day', () => {
    const scenario = withChanges(defaultScenario(), { 'conditions.wet': true, 'traffic.gap_m': 8 });
    expect(plain(conditionsLine(scenario, []))).toBe('wet, 26 °C, 210 m, 8 m behind');
  });
});
