import { describe, expect, it } from 'vitest';
import type { SafeSpan } from '../../../engine/index.ts';
import { blankedLap } from '../../../web/display/blanked-lap.ts';
import {
  blankingColumns,
  blankingRows,
  blankingsSummary,
  blankingsTitle,
  marginNote,
  pinnedAt,
  pinnedSummary,
  pointWords,
} from '../../../web/display/blanking-words.ts';
import { cellText, fileRows } from '../../../web/display/table-columns.ts';
import { sampleMap } from '../../support/sample-map.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const map = sampleMap();

const span = (more: Partial<SafeSpan> = {}): SafeSpan => ({
  axle: 'front',
  side: 'both',
  span_pct: [56.4, 66.2],
  low: null,
  high: null,
  best: null,
  candidates: [],
  proposal: null,
  drawn: null,
  none: null,
  reason: '',
  changesOn: null,
  isIdle: false,
  before: null,
  ...more,
});
const none = (why: 'hot when open' | 'cold when closed' | 'swing'): Partial<SafeSpan> => ({
  span_pct: null,
  best: { blanking_pct: 0, panel: 0, hotMargin_K: -9, coldMargin_K: 40, count: null },
  none: {
    why,
    hotLimit: 'face peak',
    coldLimit: 'bite',
    warmFrom_pct: null,
    coolTo_pct: null,
    swing_K: null,
    width_K: 250,
    remedies: [],
  },
});

describe('the title of all blankings', () => {
  it.each([
    [span(), 'Front: every counted lap stays in from 57 to 66 %'],
    [span({ span_pct: [0, 82.4] }), 'Front: every counted lap stays in up to 82 %'],
    [span({ span_pct: [41.2, 100] }), 'Front: every counted lap stays in from 42 % on'],
    [span({ span_pct: [0, 100] }), 'Front: every counted lap stays in at any blanking'],
    [span({ span_pct: [60.8, 61.3] }), 'Front: every counted lap stays in at 61 % alone'],
    [span({ span_pct: [60.2, 60.7] }), 'Front: every counted lap stays in from 60.2 to 60.7 %'],
    [span(none('swing')), 'Front: no blanking keeps every counted lap in'],
    [span(none('cold when closed')), 'Front: 0 of 4 counted laps too cold even fully closed'],
    [span(none('hot when open')), 'Front: 0 of 4 counted laps too hot even fully open'],
    [span({ span_pct: null, reason: 'no lap counts' }), 'Front: not judged, no lap counts'],
    [
      span({ isIdle: true, changesOn: 2 }),
      'Front: what is fitted first decides no counted lap: the blanking changes on lap 2',
    ],
    [
      span({ ...none('swing'), before: { ...span(), lap: 17 } }),
      'Front: every counted lap before lap 17 stays in from 57 to 66 %',
    ],
    [undefined, 'Front: all blankings, open to closed'],
  ])('says what the safe span says', (found, words) => {
    expect(plain(blankingsTitle(map, found))).toBe(words);
  });
});

describe('one lap at one blanking', () => {
  const at = (place: number, pct: number): string => plain(pointWords(blankedLap(map, place, pct)!, pct));

  it('tells the peak and the smaller margin', () => {
    expect(at(3, 60)).toBe('Lap 4 at 60 %: peak 640 °C, 6 K to spare');
    expect(at(3, 66)).toBe('Lap 4 at 66 %: peak 650 °C, less than 1 K to spare');
  });

  it('tells by how much it is out, and whether it counts', () => {
    expect(at(3, 80)).toMatch(/, 28 K too hot$/);
    expect(at(0, 40)).toMatch(/, 34 K too cold, does not count$/);
    const wide = blankedLap(sampleMap({ edges: () => [40, 60] }), 3, 50)!;
    expect(plain(pointWords(wide, 50))).toMatch(/, 20 K too hot and 20 K too cold$/);
  });

  it('never calls a margin spare that the window only forgives, and says where no hard stop is', () => {
    const lap = blankedLap(map, 3, 60)!;
    expect(plain(pointWords({ ...lap, hotMargin_K: -3 }, 60))).toMatch(
      /, 3 K over face peak, within the short excess allowed$/,
    );
    const still = { ...lap, coldMargin_K: Infinity, coldestStop_K: null };
    expect(plain(pointWords(still, 60))).toMatch(/, 12 K to spare, no hard stop$/);
  });
});

describe('the table of all blankings', () => {
  it('has every 5 % and each blanking at which the verdict turns', () => {
    const fine = sampleMap({
      percents: [...Array(21).keys()].flatMap((i) =>
        i === 11 || i === 13 ? [5 * i, 5 * i + 1, 5 * i + 2, 5 * i + 3, 5 * i + 4] : [5 * i],
      ),
    });
    const extra = blankingRows(fine)
      .map(({ blanking_pct }) => blanking_pct)
      .filter((pct) => pct % 5 !== 0);
    expect(extra).toEqual([56, 57, 66, 67]);
  });

  it('counts laps, names the first that is out and gives both margins', () => {
    const cells = (pct: number): string[] => {
      const row = map.rows.find(({ blanking_pct }) => blanking_pct === pct)!;
      return blankingColumns.map((column) => plain(cellText(column, row)));
    };
    expect(cells(60)).toEqual(['60', '4', 'none', '12', '6']);
    expect(cells(80)).toEqual(['80', '0', '3', '−28', '46']);
    expect(fileRows(blankingColumns, map.rows)[0]).toEqual([
      'Blanking, %',
      'Counted laps in',
      'First lap out',
      'Hot margin, K',
      'Cold margin, K',
    ]);
  });

  it('is summed up open, as fitted and closed', () => {
    expect(plain(blankingsSummary(map, 61))).toBe(
      'Counted laps in: 0 of 4 fully open, 4 at 60 %, 0 fully closed.',
    );
    expect(plain(blankingsSummary(map, 0))).toBe('Counted laps in: 0 of 4 fully open, 0 fully closed.');
  });
});

describe('what pinned runs had', () => {
  const rows = blankingRows(map);
  const names = (blanking_pct: number): [at: number, name: string][] =>
    rows.flatMap((row) =>
      pinnedAt(rows, row, [{ name: 'pinned', blanking_pct }]).map((name): [number, string] => [
        row.blanking_pct,
        name,
      ]),
    );

  it('stands at its row of the table, or near the nearest', () => {
    expect(names(45)).toEqual([[45, 'pinned']]);
    expect(names(46)).toEqual([[45, 'near pinned']]);
  });

  it('is in the summary with the laps that are in', () => {
    const text = pinnedSummary(map, [{ name: 'pinned 0 %', blanking_pct: 0 }]);
    const open = /: (\d+ of \d+) fully open/.exec(plain(blankingsSummary(map, 50)))![1];
    expect(text).toBe(`Pinned 0 %, dashed: ${open} counted laps in.`);
    expect(pinnedSummary(map, [])).toBe('');
  });
});

describe('what is said of margins', () => {
  const first = map.rows[0]!;
  const row = (status: 'in' | 'hot', hotMargin_K: number) => ({
    ...first,
    verdict: { ...first.verdict, status, hotMargin_K, coldMargin_K: 20 },
  });

  it('explains a row that stays in past its limit, and only where there is one', () => {
    const plainWords = 'A margin is what is to spare; below zero it is past its limit';
    expect(marginNote([row('in', 4), row('hot', -9)])).toBe(`${plainWords}.`);
    expect(marginNote([row('in', -2)])).toBe(`${plainWords}, in bold rows within the short excess allowed.`);
  });
});
