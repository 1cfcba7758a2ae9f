import { describe, expect, it } from 'vitest';
import {
  allowedWords,
  checks,
  countOf,
  errorWords,
  furthest,
  proofs,
  sharedDoubt,
  type Check,
  type Line,
  type Proof,
} from '../../../web/pages/trust/words.ts';

const line: Line = {
  quantity: 'speed',
  unit: 'm/s',
  values: 3,
  relative: true,
  median: 0.001,
  max: 0.0137,
  allowed: { relative: 0.02 },
  uncertainty: 'none',
  why: 'test',
};
const check: Check = { name: 'a', title: 'A', group: 'air', proof: 'code', by: 'B', lines: [line] };
const spaced = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('the words of the checks', () => {
  it('tell an error as a share, in its unit, or as rounding', () => {
    expect(spaced(errorWords(line, 0.0137))).toBe('1.4 %');
    expect(spaced(errorWords(line, 0.000053))).toBe('0.0053 %');
    expect(spaced(errorWords({ ...line, relative: false }, 0.0052))).toBe('0.0052 m/s');
    expect(errorWords({ ...line, relative: false, unit: '' }, 12)).toBe('12');
    expect(errorWords(line, 0)).toBe('rounding');
  });

  it('tell both parts of what is allowed', () => {
    expect(spaced(allowedWords(line))).toBe('2 %');
    expect(spaced(allowedWords({ ...line, allowed: { relative: 0.1, absolute: 0.000005 } }))).toBe(
      '10 % + 0.000005 m/s',
    );
  });

  it('say once what the source doubts of all its columns', () => {
    expect(sharedDoubt(check)).toBe('none');
    expect(sharedDoubt({ ...check, lines: [line, { ...line, uncertainty: '1 %' }] })).toBeNull();
  });

  it('count every check under one kind of proof, and name the furthest off', () => {
    const kinds = Object.keys(proofs) as Proof[];
    expect(kinds.reduce((sum, proof) => sum + countOf(proof), 0)).toBe(checks.length);
    const worst = Math.max(
      ...checks.flatMap(({ lines }) => lines.map((each) => (each.relative ? each.max : 0))),
    );
    expect(spaced(furthest(1))).toMatch(new RegExp(` ${Number((worst * 100).toPrecision(2))} %$`));
  });
});
