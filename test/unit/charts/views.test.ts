import { describe, expect, it } from 'vitest';
import { phaseChain } from '../../../web/charts/phase-chain.ts';
import { overlaps } from '../../../web/charts/place-labels.ts';
import { cellsView } from '../../../web/charts/cells-view.ts';
import { mapView, outlineIn, placeAt } from '../../../web/charts/map-view.ts';
import { blankingAt, dimensions, edgeOf, mouthWidth_px } from '../../../web/charts/mouth-view.ts';
import { momentText } from '../../../web/charts/moment-text.ts';
import { stintView } from '../../../web/charts/stint-view.ts';
import { endLabels, stintWords } from '../../../web/charts/stint-words.ts';
import { textWidth } from '../../../web/charts/text-width.ts';
import { traceView } from '../../../web/charts/trace-view.ts';
import { cornerNames, traceWords } from '../../../web/charts/trace-words.ts';
import type { Word } from '../../../web/charts/word.ts';
import { ordinaryKinds, restartKinds, sampleResult } from '../../support/sample-result.ts';

const coolings = [0.3, 0.5, 0.8];
const widths = [340, 420, 560, 640, 1000];
const cases = coolings.flatMap((cooling) => widths.map((width) => ({ cooling, width })));

const boxOf = ({ text, x, y, anchor }: Word) => {
  const width = textWidth(text);
  return { left: anchor === 'middle' ? x - width / 2 : x, top: y - 12, width, height: 15 };
};

function touching(words: Word[]): string[] {
  return words.flatMap((word, i) =>
    words
      .slice(i + 1)
      .filter((other) => overlaps(boxOf(word), boxOf(other)))
      .map((other) => `${word.text} / ${other.text}`),
  );
}

const stintAt = (cooling: number, width: number) => {
  const result = sampleResult({ kinds: restartKinds, cooling });
  const pinned = sampleResult({ kinds: restartKinds, cooling: 0.6 });
  const [front, other] = [result.corners[0], pinned.corners[0]];
  if (!front || !other) throw new Error('corners: none');
  const run = { label: 'pinned 50 %', dash: 0, corner: other, laps: pinned.laps };
  return { result, front, run, view: stintView(result, front, [run], width, 240) };
};

describe('the stint chart', () => {
  it.each(cases)('keeps its words apart at cooling $cooling, $width px', ({ cooling, width }) => {
    const { view } = stintAt(cooling, width);
    expect(touching(stintWords(view, width))).toEqual([]);
    expect(touching(endLabels(view, width))).toEqual([]);
  });

  it('says how far over the limit the worst lap is', () => {
    const { view, front } = stintAt(0.5, 640);
    const over = Math.round(-front.verdict.hotMargin_K);
    expect(stintWords(view, 640).map(({ text }) => text)).toContainEqual(
      expect.stringMatching(new RegExp(`\\+${String(over)}\\sK$`)),
    );
  });

  it('fills exactly the counted laps that are out', () => {
    const { view, front, result } = stintAt(0.5, 640);
    const filled = view.x.laps.filter(({ middle }) =>
      view.tooHot.some((run) => middle > run.left && middle < run.right),
    );
    const out = front.laps.filter(
      (lap, i) => result.laps[i]?.counted && lap.faceMax_K > front.window.facePeak_K,
    );
    expect(filled.map(({ lap }) => lap.lap)).toEqual(out.map(({ lap }) => lap));
  });

  it('stands still while the blanking is moved within reason', () => {
    const ranges = [0.45, 0.5, 0.6].map((cooling) => stintAt(cooling, 640).view.y);
    expect(new Set(ranges.map(({ low, high }) => `${low} ${high}`)).size).toBe(1);
  });

  it('breaks the line of coldest stops where a lap has none', () => {
    expect(stintAt(0.5, 640).view.now.coldest).toHaveLength(2);
  });
});

describe('the chain of phases', () => {
  it('splits where counting starts and names what fits', () => {
    const { view } = stintAt(0.5, 640);
    expect(phaseChain(view.x).map(({ text }) => text)).toEqual([
      'out',
      'coming in',
      'push, counted',
      'safety',
      'after',
      'push, counted',
      'in',
    ]);
  });
});

describe('lap cells', () => {
  it('stay inside their row, however hot or cold', () => {
    for (const cooling of [0.1, 0.5, 2]) {
      const { front, view } = stintAt(cooling, 640);
      for (const bar of cellsView(front, view.x, 84, 76).bars) {
        expect(bar.top).toBeGreaterThanOrEqual(84);
        expect(bar.bottom).toBeLessThanOrEqual(160);
        expect(bar.bottom).toBeGreaterThan(bar.top);
      }
    }
  });
});

describe('the trace of a lap', () => {
  it.each(cases)('keeps its words apart at cooling $cooling, $width px', ({ cooling, width }) => {
    const { result, front, run } = stintAt(cooling, width);
    const lap = result.laps[5];
    if (!lap) throw new Error('laps: none');
    const view = traceView(result, front, run, lap, width, 170);
    expect(touching(traceWords(view, width))).toEqual([]);
    expect(touching(cornerNames(view, result))).toEqual([]);
  });
});

describe('the map', () => {
  const result = sampleResult({ kinds: ordinaryKinds });
  const [front, lap] = [result.corners[0], result.laps[5]];
  if (!front || !lap) throw new Error('corners: none');

  it('lies inside its box with the hottest corners named', () => {
    const line = outlineIn(result.track, 212, 190) ?? [];
    expect(line.length).toBeGreaterThan(10);
    expect(line.every(({ x, y }) => x > 0 && x < 212 && y > 0 && y < 190)).toBe(true);
    const view = mapView(result, front, lap, { line, width: 212, height: 190 });
    expect(view.labels.length).toBeGreaterThanOrEqual(2);
  });

  it('puts the car on the road', () => {
    const line = [
      { x: 0, y: 0, distance_m: 0 },
      { x: 10, y: 0, distance_m: 100 },
    ];
    expect(placeAt(line, 25)).toEqual({ x: 2.5, y: 0 });
    expect(placeAt(line, 500)).toEqual({ x: 10, y: 0 });
  });

  it('is not drawn without positions', () => {
    const bare = sampleResult({ hasMap: false });
    expect(outlineIn(bare.track, 212, 190)).toBeNull();
  });
});

describe('the mouth', () => {
  it('turns an edge into whole percent and back', () => {
    expect(mouthWidth_px(110, 1.89)).toBe(208);
    expect(blankingAt(edgeOf(70, 208), 208)).toBe(70);
    expect(blankingAt(-30, 208)).toBe(0);
    expect(blankingAt(999, 208)).toBe(100);
  });

  it('dimensions both parts in millimetres', () => {
    expect(dimensions(110, 70)).toEqual(['77', '33']);
  });
});

describe('the scrubber', () => {
  const result = sampleResult();
  const tenth = result.laps[9];
  if (!tenth) throw new Error('laps: none');

  it('says where it stands', () => {
    expect(momentText(result, tenth.start_s + 48.5)).toMatch(/^lap 10, 48\.5 seconds, \d+ km\/h$/);
    expect(momentText(result, tenth.start_s + 1e5)).toMatch(/^standing after lap 20/);
  });
});
