import { describe, expect, it } from 'vitest';
import type { NoSpan, SafeSpan } from '../../../engine/index.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { plainText, sentenceOf, type FoundSpans } from '../../../web/display/sentence.ts';
import {
  proposedAt,
  safeEdges,
  safeTogether,
  spanClause,
  spanRange,
  spanSentence,
  spansOfLever,
} from '../../../web/display/span-words.ts';
import { spanNote } from '../../../web/display/span-note.ts';
import { noteOf } from '../../../web/pages/stint/over-chart.ts';
import { corner, resultOf } from '../../support/verdicts.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

const span = (more: Partial<SafeSpan> = {}): SafeSpan => ({
  axle: 'front',
  side: 'both',
  span_pct: [53.6, 61.3],
  low: { limit: 'bite', lap: 5, place: 'turn 11' },
  high: { limit: 'face peak', lap: 9, place: 'turn 7' },
  best: { blanking_pct: 57, panel: null, hotMargin_K: 9.8, coldMargin_K: 7.7, count: null },
  candidates: [],
  proposal: { blanking_pct: 57, panel: null, hotMargin_K: 9.8, coldMargin_K: 7.7, count: null },
  drawn: null,
  none: null,
  reason: '',
  changesOn: null,
  isIdle: false,
  before: null,
  ...more,
});

const none = (more: Partial<NoSpan> = {}): Partial<SafeSpan> => ({
  span_pct: null,
  low: null,
  high: null,
  best: { blanking_pct: 75, panel: 3, hotMargin_K: -49.5, coldMargin_K: -47, count: null },
  none: {
    why: 'swing',
    hotLimit: 'face peak',
    coldLimit: 'bite',
    warmFrom_pct: 84.9,
    coolTo_pct: 63.2,
    swing_K: 346.5,
    width_K: 250,
    remedies: [
      { key: 'driver.grip_share_braking_dry', from: 0.74, to: 0.666, gain_K: 11.6 },
      { key: 'brakes.front.disc.cheek_mm', from: 9.2, to: 10.2, gain_K: 2.6 },
    ],
    ...more,
  },
});

describe('the safe span in words', () => {
  it('is rounded inwards, and keeps a decimal where whole percent would leave nothing', () => {
    expect(plain(spanRange([53.6, 61.3]))).toBe('54 to 61 %');
    expect(plain(spanRange([54, 61]))).toBe('54 to 61 %');
    expect(plain(spanRange([60.2, 60.7]))).toBe('60.2 to 60.7 %');
    expect(plain(spanRange([60.8, 61.3]))).toBe('61 % alone');
  });

  it('says what to fit and what is to spare, by the letter where it is a panel', () => {
    expect(plain(spanSentence(span()))).toBe('Safe on counted laps from 54 to 61 %; fit 57 %, 8 K to spare.');
    const panel = { blanking_pct: 60, panel: 2, hotMargin_K: 3, coldMargin_K: 4, count: null };
    expect(plain(spanSentence(span({ proposal: panel })))).toContain('; fit panel C (60 %), 3 K to spare.');
    expect(plain(spanSentence(span({ proposal: null })))).toBe(
      'Safe on counted laps from 54 to 61 %; its blank cannot be cut that open.',
    );
    const closed = { blanking_pct: 96, panel: null, hotMargin_K: 30, coldMargin_K: 9, count: null };
    expect(plain(spanSentence(span({ proposal: closed })))).toContain(
      '; fit 96 %, 9 K to spare, beyond practice.',
    );
  });

  it('says how many runs that keeps in, once they are made and where the words have room', () => {
    const count = { in: 35, hot: 35, cold: 30, both: 0, notJudged: 0 };
    const drawn = span({ proposal: { ...span().proposal!, count } });
    expect(plain(spanSentence(drawn))).toBe(
      'Safe on counted laps from 54 to 61 %; fit 57 %, 8 K to spare, 35 of 100 runs in.',
    );
    expect(spanSentence(drawn, false)).toBe(spanSentence(span()));
  });

  it('names lap and corner at each end, and an end that is not bounded', () => {
    expect(plain(spanNote(span()))).toBe(
      'Safe 54 to 61 %: below, turn 11 starts under bite on lap 5; above, turn 7 passes the face peak on lap 9.',
    );
    expect(plain(spanNote(span({ low: null, high: null })))).toContain(
      'fully open is safe; fully closed is safe',
    );
    const others = span({
      low: { limit: 'run', lap: 6, place: '' },
      high: { limit: 'bulk', lap: 12, place: 'turn 3' },
    });
    expect(plain(spanNote(others))).toContain(
      'below, the mean of the lap is too cold on lap 6; above, the bulk passes its limit at turn 3 on lap 12.',
    );
  });

  it('says of an empty one why, how bad the least bad is, and what would gain what, at once only where that is enough', () => {
    expect(plain(spanSentence(span(none())))).toBe(
      'No blanking holds both: swing 347 K, window 250 K; least bad 75 %, 50 K too hot and 47 K too cold.',
    );
    expect(plain(spanNote(span(none())))).toBe(
      'Least bad 75 %: 50 K too hot and 47 K too cold. Would gain: braking 10 % softer 12 K; cheeks 1.0 mm thicker 3 K.',
    );
    const [softer] = none().none!.remedies;
    const helped = none({ remedies: [{ ...softer!, gain_K: 51 }] });
    expect(plain(spanSentence(span(helped)))).toMatch(/too cold; braking 10 % softer would gain 51 K\.$/);
    const open = none({
      why: 'hot when open',
      remedies: [{ key: 'brakes.front.duct.hoses', from: 1, to: 2, gain_K: 33 }],
    });
    expect(plain(spanSentence(span(open)))).toBe('Too hot even fully open; one hose more would gain 33 K.');
    expect(plain(spanSentence(span(none({ why: 'cold when closed', remedies: [] }))))).toBe(
      'Too cold even fully closed.',
    );
  });

  it('is told up to the lap on which a phase blanks otherwise, where nothing holds the laps after it', () => {
    const parted = span({ ...none(), before: { ...span(), lap: 17 } });
    expect(plain(spanSentence(parted))).toBe('Before lap 17 safe from 54 to 61 %; fit 57 %, 8 K to spare.');
    expect(plain(spanClause(parted))).toBe('; before lap 17 safe from 54 to 61 %');
    expect(plain(spanNote(parted))).toMatch(
      /^Safe 54 to 61 %: .* No first blanking holds the laps from 17 on\.$/,
    );
    // no third line, which would push the foot out of the window
    const counted = 'Its doubt could not be computed: broken.';
    expect(noteOf(corner('front'), [parted], counted, null)).toBe(spanNote(parted));
    expect(noteOf(corner('front'), [span()], counted, null)).toMatch(/Finding what to measure first\.$/);
    expect(safeEdges([parted])).toEqual({ warmFrom_pct: 53.6, coolTo_pct: 61.3 });
  });

  it('says so where what is fitted first decides no counted lap, and till when it is fitted where it does', () => {
    const idle = span({ isIdle: true, changesOn: 2, span_pct: [0, 100] });
    expect(plain(spanSentence(idle))).toBe(
      'What is fitted first decides no counted lap: the blanking changes on lap 2.',
    );
    expect(spanNote(idle)).toBe('');
    expect(safeEdges([idle])).toBeNull();
    expect(safeTogether([idle])).toBeNull();
    expect(plain(spanSentence(span({ changesOn: 15 })))).toContain(
      'Safe on counted laps, fitted until lap 15, from 54 to 61 %',
    );
  });

  it('never calls a margin spare that the window only forgives', () => {
    const brief = { blanking_pct: 71, panel: null, hotMargin_K: 8, coldMargin_K: -3, count: null };
    expect(plain(spanSentence(span({ proposal: brief })))).toContain(
      '; fit 71 %, 3 K under bite, within the short excess allowed.',
    );
  });

  it('names the limits where the swing is not what fails', () => {
    const run = none({ swing_K: 236, coldLimit: 'run' });
    expect(plain(spanSentence(span(run)))).toContain(
      'No blanking holds both, the lowest mean of a lap and the face peak;',
    );
  });

  it('is drawn over the mouth only where all corners of the lever have one', () => {
    expect(safeTogether([span()])).toEqual([53.6, 61.3]);
    expect(
      safeTogether([span(none({ why: 'hot when open', warmFrom_pct: 0, coolTo_pct: null }))]),
    ).toBeNull();
    expect(
      safeTogether([span(none({ why: 'cold when closed', warmFrom_pct: null, coolTo_pct: 100 }))]),
    ).toBeNull();
    expect(safeTogether([span({ side: 'left' }), span({ side: 'right', span_pct: [70, 80] })])).toBeNull();
  });

  it('draws what the sentence proposes, and nothing where nothing holds', () => {
    expect(proposedAt([span()])).toBe(57);
    const later = {
      ...span(),
      proposal: { blanking_pct: 63, panel: null, hotMargin_K: 9, coldMargin_K: 9, count: null },
      lap: 15,
    };
    expect(proposedAt([span({ ...none(), before: later })])).toBe(63);
    expect(proposedAt([span(none())])).toBeNull();
    expect(proposedAt([span(), span()])).toBeNull();
  });

  it('is a clause after the other axle’s verdict', () => {
    expect(plain(spanClause(span()))).toBe('; safe from 54 to 61 %');
    expect(plain(spanClause(span({ span_pct: [0, 78.8] })))).toBe('; safe up to 78 %');
    expect(spanClause(span(none()))).toBe('; no blanking is safe');
    expect(spanClause(span({ span_pct: null, best: null, reason: 'no duct' }))).toBe('');
  });

  it('moves with a lever: both sides together keep what both allow', () => {
    const left = span({ side: 'left', span_pct: [40, 55] });
    const right = span({ side: 'right', span_pct: [50, 65] });
    const rear = span({ axle: 'rear' });
    expect(spansOfLever([left, right, rear], 'front', null)).toEqual([left, right]);
    expect(spansOfLever([left, right, rear], 'front', 'right')).toEqual([right]);
    expect(spansOfLever([rear], 'rear', 'left')).toEqual([rear]);
    expect(safeEdges([left, right])).toEqual({ warmFrom_pct: 50, coolTo_pct: 55 });
    expect(safeEdges([span(none())])).toEqual({ warmFrom_pct: 84.9, coolTo_pct: 63.2 });
    expect(safeEdges([span({ span_pct: null, best: null })])).toBeNull();
  });
});

describe('the sentence with a span', () => {
  const read = (found: FoundSpans): string =>
    plain(
      plainText(
        sentenceOf(resultOf(corner('front'), corner('rear')), defaultScenario(), {
          spans: found,
          spread: null,
        }),
      ),
    );

  it('speaks of both axles', () => {
    const text = read([span(), span({ axle: 'rear', span_pct: [0, 78.8] })]);
    expect(text).toContain(
      'Safe on counted laps from 54 to 61 %; fit 57 %, 8 K to spare. Rear 50 % stays in,',
    );
    expect(text).toContain('; safe up to 78 %. Its doubt is being computed; not calibrated.');
  });

  it('leaves the runs of what is proposed out where all that is said has no room for them', () => {
    const count = { in: 35, hot: 35, cold: 30, both: 0, notJudged: 0 };
    const drawn = [span({ proposal: { ...span().proposal!, count } }), span({ axle: 'rear' })];
    expect(read(drawn)).toContain('8 K to spare, 35 of 100 runs in. Rear');
    const winding = 'the last but one of the three left-handers that follow the tunnel under the road';
    const rear = corner('rear', { hotPlace: winding, coldPlace: winding });
    const long = sentenceOf(resultOf(corner('front'), rear), defaultScenario(), {
      spans: drawn,
      spread: null,
    });
    expect(plain(plainText(long))).toContain('8 K to spare. Rear');
  });

  it('says that the span follows while it is searched, and why it does not where the search failed', () => {
    expect(read(null)).toContain('The safe span follows. Rear');
    expect(read('No safe span: its worker stopped, killed.')).toContain(
      'No safe span: its worker stopped, killed. Rear',
    );
  });

  it('says nothing of a span where nothing is judged', () => {
    const unjudged = corner('front', { status: 'not judged', reason: 'no lap counts' });
    const found = [
      span({ span_pct: null, best: null, low: null, high: null, proposal: null, reason: 'no lap counts' }),
    ];
    const text = plain(
      plainText(sentenceOf(resultOf(unjudged), defaultScenario(), { spans: found, spread: null })),
    );
    expect(text).not.toMatch(/safe/i);
  });
});
