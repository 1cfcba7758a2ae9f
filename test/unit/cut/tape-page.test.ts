import { describe, expect, it } from 'vitest';
import { CAUTIONS, cautionsFor, NOT_FOR_A_CAR } from '../../../engine/cut/cautions.ts';
import { layOut } from '../../../engine/cut/sheets.ts';
import { sheetSvg } from '../../../engine/cut/svg.ts';
import { tapePiece, type TapeWish } from '../../../engine/cut/tape-page.ts';
import { tapeStrips } from '../../../engine/cut/tape-strips.ts';
import { mouthOutline } from '../../../engine/duct/mouth-outline.ts';
import { FRAME, MOUTHS } from '../../support/cut.ts';
import { readCutSvg, type ReadSheet } from '../../support/read-cut-svg.ts';

const rectangle = mouthOutline(MOUTHS.rectangle!).loop;
const round = mouthOutline(MOUTHS.round!).loop;
const wish: TapeWish = {
  mouth: rectangle,
  from: 'outboard',
  strip_mm: 25,
  overlap_mm: 3,
  strips: 3,
  side: 'left',
  asked_pct: 60,
  covered_pct: 57.5,
  insteadOf: 'C, front, 60 %',
};
const pageOf = (more: Partial<TapeWish>): ReadSheet => {
  const { sheets } = layOut([tapePiece({ ...wish, ...more })], {
    ...FRAME,
    cautions: 'tape',
    isExample: true,
  });
  expect(sheets).toHaveLength(1);
  return readCutSvg(sheetSvg(sheets[0]!));
};

describe('strips of tape', () => {
  it('begin at the edge and lie over one another', () => {
    const found = tapeStrips(wish).map(({ number, start_mm, end_mm, length_mm }) => [
      number,
      start_mm,
      end_mm,
      length_mm,
    ]);
    // 80 mm of mouth, 20 mm of body at both ends, 20 mm to fold
    expect(found).toEqual([
      [1, 0, 25, 140],
      [2, 22, 47, 140],
      [3, 44, 69, 140],
    ]);
  });

  it('are as long as a round mouth is high under them', () => {
    const [first, second] = tapeStrips({ ...wish, mouth: round, overlap_mm: 0 });
    const chord = (deep: number): number => 2 * Math.sqrt(49 ** 2 - (49 - deep) ** 2);
    expect(first!.length_mm).toBeCloseTo(chord(25) + 60, 2);
    expect(second!.length_mm).toBeCloseTo(98 + 60, 2); // its middle is between 25 and 50
  });

  it('begin at whatever edge they are told to', () => {
    const lengths = (['outboard', 'inboard', 'top', 'bottom'] as const).map(
      (from) => tapeStrips({ ...wish, from, strips: 1 })[0]!.length_mm,
    );
    expect(lengths).toEqual([140, 140, 180, 180]);
  });

  it('say where one reaches beyond the far rim', () => {
    const trimmed = tapeStrips({ ...wish, overlap_mm: 0, strips: 5 }).map(({ isTrimmed }) => isTrimmed);
    expect(trimmed).toEqual([false, false, false, false, true]);
  });
});

describe('a tape plan', () => {
  it('numbers the strips in the order of laying, from the outboard edge, which is right of the left mouth for who stands before it', () => {
    const places = (side: 'left' | 'right'): number[] =>
      ['1', '2', '3'].map((n) => pageOf({ side }).texts.find(({ text }) => text === n)!.x);
    const [left, right] = [places('left'), places('right')];
    expect(right[1]! - right[0]!).toBeCloseTo(22, 3);
    expect(right[2]! - right[1]!).toBeCloseTo(22, 3);
    expect(left[1]! - left[0]!).toBeCloseTo(-22, 3);
  });

  it('says what to cut, where to lay it, what it covers and where to pull', () => {
    const words = pageOf({}).texts.map(({ text }) => text);
    expect(words).toEqual(
      expect.arrayContaining([
        '3 strips of 25 mm cover 57.5 % (asked 60 %)',
        'each 3 mm over the one before',
        '2: cut 140 mm, lay from 22 mm to 47 mm',
        '20 mm on the body at both ends; fold the last 20 mm on itself: the tab to pull',
        'PULL',
        NOT_FOR_A_CAR,
      ]),
    );
    expect(pageOf({ overlap_mm: 0 }).texts.map(({ text }) => text)).toContain('edge to edge');
  });

  it('draws the mouth as large as it is', () => {
    const widths = pageOf({})
      .strokes.filter(({ layer }) => layer === 'MARK')
      .map(({ polygon }) => {
        const x = polygon.map((p) => p.x);
        return Math.max(...x) - Math.min(...x);
      });
    expect(Math.max(...widths)).toBeCloseTo(120, 3);
  });
});

describe('cautions', () => {
  it('are one line each, short enough for the width of a page', () => {
    for (const { text } of CAUTIONS) expect(text.length).toBeLessThan(95);
  });

  it('stand where the act leaves the page', () => {
    expect(cautionsFor('tape', false).join()).toContain('Tape comes off at a stop');
    expect(cautionsFor('cut', false).join()).toContain('Tether every panel');
    for (const sheet of ['cut', 'tape'] as const)
      expect(cautionsFor(sheet, false).join()).toContain('A long or soft pedal: stop');
    expect(cautionsFor('cut', true)[0]).toBe(NOT_FOR_A_CAR);
  });
});
