import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CODE_ALPHABET, isCode, panelCode, withCheck } from '../../../engine/cut/code.ts';
import { codeOf } from '../../../engine/cut/face.ts';
import { WORDS } from '../../support/cut.ts';

const body = fc.string({ unit: fc.constantFrom(...CODE_ALPHABET), minLength: 1, maxLength: 20 });

const replaced = (code: string, at: number, c: string): string => code.slice(0, at) + c + code.slice(at + 1);

describe('the code on a panel', () => {
  it('has no characters that are taken for one another', () => {
    expect(CODE_ALPHABET).toHaveLength(31);
    expect(CODE_ALPHABET).not.toMatch(/[0O1IL]/);
    expect(new Set(CODE_ALPHABET).size).toBe(31);
  });

  it('is right with its check character and with no other', () => {
    fc.assert(
      fc.property(body, (text) => {
        const right = [...CODE_ALPHABET].filter((c) => isCode(text + c));
        expect(right.map((c) => text + c)).toEqual([withCheck(text)]);
      }),
    );
  });

  it('finds every single wrong character', () => {
    fc.assert(
      fc.property(body, (text) => {
        const code = withCheck(text);
        const wrong = [...code].flatMap((c, at) =>
          [...CODE_ALPHABET].filter((other) => other !== c).map((other) => replaced(code, at, other)),
        );
        expect(wrong.filter(isCode)).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  it('finds every exchange of two characters, neighbours or not', () => {
    fc.assert(
      fc.property(body, (text) => {
        const code = withCheck(text);
        const places = [...code].map((_, at) => at);
        const swapped = places.flatMap((i) =>
          places
            .filter((k) => k > i && code[k] !== code[i])
            .map((k) => replaced(replaced(code, i, code[k]!), k, code[i]!)),
        );
        expect(swapped.filter(isCode)).toEqual([]);
      }),
    );
  });

  it('follows by hand from the sum of the standard', () => {
    // A = 8, F = 13: 1 = c + 3 · 13 + 9 · 8 modulo 31, so c = 14, the character G
    expect(withCheck('AF')).toBe('AFG');
    expect(isCode('afg')).toBe(true);
  });

  it('begins with the letter and the axle and differs wherever a panel differs', () => {
    expect(panelCode('B', 'rear', ['x'])).toMatch(/^BR[2-9A-Z]{5}$/);
    const others = [
      { side: 'right' as const },
      { blanking_pct: 61 },
      { mouth: 'round, 98 mm' },
      { made: 'holes,M4,3' },
      { date: '2031-05-05' },
      { modelHash: '12ab 34ce' },
      { letter: 'D' },
    ];
    const codes = [WORDS, ...others.map((other) => ({ ...WORDS, ...other }))].map(codeOf);
    expect(new Set(codes).size).toBe(codes.length);
    expect(codes.every(isCode)).toBe(true);
  });

  it('is nothing that holds other characters', () => {
    expect(['', 'A', 'AF0', 'AFO', 'AF-'].filter(isCode)).toEqual([]);
  });
});
