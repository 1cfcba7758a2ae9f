import { describe, expect, it } from 'vitest';
import type { CornerResult, StintResult, Verdict } from '../../../engine/index.ts';
import { defaultScenario, withCar } from '../../../engine/scenario/library.ts';
import { plainText, sentenceOf, type Advice } from '../../../web/display/sentence.ts';
import { corner, resultOf } from '../../support/verdicts.ts';

const scenario = defaultScenario();
const advice: Advice = { spans: [], spread: null };
const hot: Partial<Verdict> = { status: 'hot', firstLapOut: 5, hotMargin_K: -32.4, hotPlace: 'turn 7' };
const cold: Partial<Verdict> = { status: 'cold', firstLapOut: 6, coldMargin_K: -25, coldPlace: 'turn 1' };

/** The sentence with plain spaces, as a person reads it. */
const read = (front: CornerResult, rear = corner('rear')): string =>
  plainText(sentenceOf(resultOf(front, rear), scenario, advice)).replaceAll('\u00a0', ' ');

describe('the sentence', () => {
  it('says from when, by how much and where it is too hot', () => {
    expect(read(corner('front', hot))).toBe(
      'Front 70 % blanked runs too hot from lap 5, by 32 K at turn 7. ' +
        'Rear 50 % stays in, 43 K from too hot at turn 3. Its doubt is being computed; not calibrated.',
    );
  });

  it('says before which corner a stop starts too cold', () => {
    expect(read(corner('front', cold))).toContain(
      'Front 70 % blanked runs too cold from lap 6, by 25 K before turn 1.',
    );
  });

  it('says which way it fails first when it stays in', () => {
    const nearCold = corner('front', { coldMargin_K: 12 });
    expect(read(nearCold)).toContain('Front 70 % blanked stays in, 12 K from too cold before turn 1.');
  });

  it('says so when it stays in only by what the window forgives', () => {
    expect(read(corner('front', { coldMargin_K: -12 }))).toContain(
      'Front 70 % blanked stays in; 12 K under bite before turn 1 is within the short excess allowed.',
    );
    expect(read(corner('front', { hotMargin_K: -9 }))).toContain(
      'stays in; 9 K over face peak at turn 3 is within the short excess allowed.',
    );
  });

  it('lets the axle that is out lead', () => {
    expect(read(corner('front'), corner('rear', cold))).toBe(
      'Rear 50 % blanked runs too cold from lap 6, by 25 K before turn 1. ' +
        'Front 70 % stays in, 43 K from too hot at turn 3. Its doubt is being computed; not calibrated.',
    );
  });

  it('says that no blanking can hold both when the swing is wider than the window', () => {
    const both = corner('front', { ...hot, ...cold, status: 'both', swing_K: 307 });
    expect(read(both)).toContain(
      'Front 70 % blanked runs too hot by 32 K at turn 7 and too cold by 25 K before turn 1: ' +
        'its swing of 307 K is wider than the window, 250 K.',
    );
  });

  it('names the bulk where the bulk decides', () => {
    expect(read(corner('front', { ...hot, hotLimit: 'bulk' }))).toContain(
      'runs too hot in the bulk from lap 5, by 32 K',
    );
  });

  it('names the mean of the lap where the run limit decides', () => {
    expect(read(corner('front', { ...cold, coldLimit: 'run' }))).toContain(
      'runs too cold on the mean of the lap from lap 6, by 25 K.',
    );
  });

  it('gives no verdict without counted laps, and says why', () => {
    const reason = 'no push lap counts before the stint ends';
    expect(read(corner('front', { status: 'not judged', reason }))).toContain(
      'Front 70 % blanked is not judged: no push lap counts before the stint ends.',
    );
  });

  it('does not turn a breath over the limit into 0 K', () => {
    expect(read(corner('front', { ...hot, hotMargin_K: -0.2 }))).toContain('by less than 1 K');
  });

  it('speaks of an axle without a duct', () => {
    const light = withCar(scenario, 'light');
    const text = plainText(sentenceOf(resultOf(corner('front'), corner('rear')), light, advice));
    expect(text).toContain('Rear, without a duct, stays in');
  });

  it('names the side where the sides differ, the one nearest to failing', () => {
    const left = corner('front', hot, { side: 'left' });
    const right = corner('front', {}, { side: 'right' });
    const text = plainText(sentenceOf(resultOf(right, left, corner('rear')), scenario, advice));
    expect(text).toMatch(/^Front left 70\s% blanked runs too hot/);
  });

  it('names what is blanked on the lap it speaks of, where a phase has changed it', () => {
    const cold = corner('front', {
      status: 'cold',
      firstLapOut: 19,
      coldMargin_K: -112,
      coldPlace: 'turn 11',
    });
    const result = {
      ...resultOf(cold, corner('rear')),
      laps: [{ lap: 19, phase: 1 }],
      phases: [{ blanking_pct: { front: 70, rear: 50 } }, { blanking_pct: { front: 40, rear: 50 } }],
    } as StintResult;
    const text = plainText(sentenceOf(result, scenario, advice)).replaceAll('\u00a0', ' ');
    expect(text).toMatch(
      /^Front, by then 40 % blanked, runs too cold from lap 19, by 112 K before turn 11\./,
    );
  });

  it('marks the words that are out', () => {
    const { lead } = sentenceOf(resultOf(corner('front', hot), corner('rear')), scenario, advice);
    expect(lead.filter(({ tone }) => tone === 'hot').map(({ text }) => text)).toEqual([
      'too hot',
      '32\u00a0K',
    ]);
  });
});
