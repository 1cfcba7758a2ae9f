import { describe, expect, it } from 'vitest';
import { cutPanels, type CutOrder, type PanelOrder } from '../../../engine/cut/cut-panels.ts';
import { problemLine } from '../../../engine/scenario/problem.ts';
import type { PanelWish } from '../../../engine/cut/wish.ts';
import { FRAME, MOUTHS, wishOf, WORDS } from '../../support/cut.ts';

const order = (letter: string, blanking_pct: number, more: Partial<PanelWish> = {}): PanelOrder => ({
  wish: wishOf(MOUTHS.rectangle!, {}, { blanking_pct, ...more }),
  words: { ...WORDS, letter },
  sides: ['left', 'right'],
});
const set: CutOrder = { panels: [order('A', 40), order('B', 60)], kerf_mm: 0, frame: FRAME };
const linesOf = (wanted: CutOrder): string[] => cutPanels(wanted).problems.map(problemLine);

describe('an order of panels', () => {
  it('has each panel for left and for right, under its letter and its own code', () => {
    const { sheets, problems } = cutPanels(set);
    expect(problems).toEqual([]);
    const texts = sheets.flatMap(({ content }) => content.letters.map(({ text }) => text));
    const titles = [
      'A  40 %  front left',
      'A  40 %  front right',
      'B  60 %  front left',
      'B  60 %  front right',
    ];
    expect(texts.filter((text) => text.includes('front ')).sort()).toEqual(titles);
    const codes = texts.filter((text) => /^[AB]F.{5}$/.test(text));
    expect(new Set(codes).size).toBe(4);
  });

  it('is refused whole, with all that is wrong and where', () => {
    const wrong: CutOrder = {
      panels: [order('A', 40), order('B', 0), order('C', 60, { corner_mm: 1 })],
      kerf_mm: 5,
      frame: { ...FRAME, correction: { across_mm: 90, up_mm: 100 } },
    };
    expect(cutPanels(wrong).sheets).toEqual([]);
    expect(linesOf(wrong)).toEqual([
      'kerf_mm: expected 0 to 3, got 5',
      'panel B front.blanking_pct: expected more than 0, got 0 (nothing to cut)',
      'panel C front.corner_mm: expected at least 3, got 1 (no sharp edges)',
      "correction.measured_mm: expected 97 to 103 each, got '90 across and 100 up' (print at actual size, not fitted to the page)",
    ]);
  });

  it('is refused for a cut that is no number', () => {
    expect(linesOf({ ...set, kerf_mm: Number.NaN })).toHaveLength(1);
  });
});
