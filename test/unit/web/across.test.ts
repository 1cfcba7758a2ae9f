import { describe, expect, it } from 'vitest';
import type { CornerResult, Pull, Verdict } from '../../../engine/index.ts';
import { printed } from '../../../engine/said.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { cornerOf } from '../../../web/display/corner.ts';
import { plainText, sentenceOf, type Advice } from '../../../web/display/sentence.ts';
import { changed, driven } from '../../support/stints.ts';
import { corner, resultOf } from '../../support/verdicts.ts';

const advice: Advice = { spans: [], spread: null };

const hot: Partial<Verdict> = { status: 'hot', firstLapOut: 5, hotMargin_K: -32.4, hotPlace: 'turn 7' };
const cold: Partial<Verdict> = { status: 'cold', firstLapOut: 6, coldMargin_K: -25, coldPlace: 'turn 1' };
const left = (verdict: Partial<Verdict>): CornerResult => corner('front', verdict, { side: 'left' });
const right = (verdict: Partial<Verdict>): CornerResult => corner('front', verdict, { side: 'right' });
const pull = (by_K: number, calls: Pull['calls']): Pull => ({
  axle: 'front',
  lap: 9,
  at: 'face peak',
  place: 'turn 7',
  hotter: 'left',
  by_K,
  calls,
});

const read = (sides: CornerResult[], pulls: Pull[] = []): string => {
  const result = { ...resultOf(...sides, corner('rear')), pulls };
  return plainText(sentenceOf(result, defaultScenario(), advice)).replaceAll('\u00a0', ' ');
};

describe('the sentence of two sides that differ', () => {
  it('says both when one is too hot and the other too cold', () => {
    const text = read([left(hot), right(cold)]);
    expect(text).toMatch(/^Front left 70 % blanked runs too hot from lap 5, by 32 K at turn 7\. /);
    expect(text).toContain('Front right 70 % runs too cold from lap 6, by 25 K before turn 1.');
  });

  it('says that the other side stays in', () => {
    expect(read([left({}), right(cold)])).toMatch(
      /^Front right 70 % blanked runs too cold .* Front left 70 % stays in, 43 K from too hot at turn 3\./,
    );
  });

  it('says by how much the other side is out the same way', () => {
    expect(read([left(hot), right({ ...hot, hotMargin_K: -9 })])).toContain('Front right too, by 9 K. ');
  });

  it('needs no word of the other side when both stay in', () => {
    expect(read([left({}), right({ coldMargin_K: 20 })])).not.toContain('Front left');
  });

  it('lets the side that is out speak, whatever is forgiven the other', () => {
    const forgiven = left({ hotMargin_K: -45 });
    const result = resultOf(forgiven, right({ ...hot, hotMargin_K: -3 }), corner('rear'));
    expect(cornerOf(result, 'front')!.side).toBe('right');
  });

  it.each<[Pull['calls'], number, string | null]>([
    ['nothing', 39, null],
    ['caution', 52, 'Front left and right part by 52 K: the car pulls.'],
    ['fault', 95, 'Front left and right part by 95 K: a fault, the car pulls.'],
  ])('when the difference calls for %s', (calls, by_K, words) => {
    const text = read([left(hot), right({})], [pull(by_K, calls)]);
    if (words) expect(text).toContain(words);
    else expect(text).not.toContain('part by');
  });

  it('gives the same difference as the note and the record', () => {
    const result = driven(changed({ 'sides.front_left.duct.recovery': 0.3 }));
    const text = plainText(sentenceOf(result, defaultScenario(), advice)).replaceAll('\u00a0', ' ');
    const by = result.pulls[0]!.by_K.toFixed(0);
    expect(text).toContain(`Front left and right part by ${by} K: the car pulls.`);
    expect(printed(result.notices.find(({ kind }) => kind === 'pull')!.said)).toContain(`${by} K hotter`);
  });
});
