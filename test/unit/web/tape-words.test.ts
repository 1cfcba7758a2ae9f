import { describe, expect, it } from 'vitest';
import { fittedWords, tapeWords } from '../../../web/display/tape-words.ts';
import { expectedWords, typedPanels } from '../../../web/controls/typed-panels.ts';

const mouth = { mouth_width_mm: 110, strip_mm: 38, panels_pct: [0, 40, 60, 75, 85] };
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const words = (blanking_pct: number, own = {}): string =>
  plain(tapeWords(blanking_pct, { ...mouth, ...own }));

describe('the words under a mouth', () => {
  it('name the nearest whole strips and the nearest panel', () => {
    expect(words(70)).toBe('2 strips of 38 mm give 69 %; panel D is 75 %');
    expect(words(37)).toBe('1 strip of 38 mm gives 35 %; panel B is 40 %');
  });

  it('say when the blanking is one of them', () => {
    expect(words(69.1)).toBe('2 strips of 38 mm, exactly; panel D is 75 %');
    expect(words(75)).toBe('2 strips of 38 mm give 69 %; panel D, exactly');
    expect(words(0)).toBe('no tape; panel A, exactly');
  });

  it('say that the last strip is cut, and that a sliver is less than half a strip', () => {
    expect(words(98)).toBe('3 strips of 38 mm, the last cut, give 100 %; panel E is 85 %');
    expect(words(10, { panels_pct: [] })).toBe('less than half a strip of 38 mm');
  });

  it('a screen reader hears strips and panel only where they are exact', () => {
    expect(plain(fittedWords(70, mouth))).toBe('');
    expect(plain(fittedWords(69.1, mouth))).toBe('2 strips of 38 mm');
    expect(plain(fittedWords(75, mouth))).toBe('panel D');
    expect(plain(fittedWords(75, { ...mouth, mouth_width_mm: 100, strip_mm: 25 }))).toBe(
      '3 strips of 25 mm, panel D',
    );
  });
});

describe('a set of panels typed by hand', () => {
  it('is put in ascending order, with commas, semicolons or spaces between', () => {
    for (const text of ['0, 40, 85, 60', '0,40,85,60', '0;40; 85 %;60', ' 0 40 85 60 '])
      expect(typedPanels(text)).toEqual({ ok: true, panels_pct: [0, 40, 60, 85] });
  });

  it('takes a decimal comma where a space or semicolon parts the entries', () => {
    expect(typedPanels('0, 62,5, 80')).toEqual({ ok: true, panels_pct: [0, 62.5, 80] });
  });

  it('answers each bad entry by itself', () => {
    const unfit = ['40', '60'].map((value) => ({ expected: '0, or 65 to 100', value }));
    expect(expectedWords(unfit)).toEqual(['Expected 0, or 65 to 100, got 40, 60.']);
    expect(typedPanels('0, lots, 140, 60, 60, -5')).toEqual({
      ok: false,
      complaints: [
        'Expected 0 to 100 %, got “lots”.',
        'Expected 0 to 100 %, got “140”.',
        '“60” is there twice.',
        'Expected 0 to 100 %, got “-5”.',
      ],
    });
  });

  it('has at most eight panels, and may be empty', () => {
    expect(typedPanels('1 2 3 4 5 6 7 8 9')).toMatchObject({
      complaints: ['Expected at most 8 panels, got 9.'],
    });
    expect(typedPanels('  ')).toEqual({ ok: true, panels_pct: [] });
  });
});
