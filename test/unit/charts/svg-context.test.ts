import { describe, expect, it } from 'vitest';
import type { CornerSpread } from '../../../engine/index.ts';
import { drawStint } from '../../../web/charts/draw-stint.ts';
import { stintView } from '../../../web/charts/stint-view.ts';
import { fanLayer } from '../../../web/pages/stint/over-chart.ts';
import { PRINT_THEME } from '../../../web/print/print-theme.ts';
import { SvgContext } from '../../../web/print/svg-context.ts';
import { restartKinds, sampleResult } from '../../support/sample-result.ts';

const result = sampleResult({ kinds: restartKinds, cooling: 0.4 });
const corner = result.corners[0]!;

const spread = {
  unknowns: 1,
  draws: 1,
  seed: 1,
  corners: [
    {
      axle: 'front',
      side: 'both',
      laps: corner.laps.map(({ lap, faceMax_K }) => ({
        lap,
        counted: true,
        facePeak_K: { p10: faceMax_K - 20, p90: faceMax_K + 20 },
        coldestStop_K: null,
      })),
      stints: [
        { status: 'in', facePeak_K: corner.laps.map(({ faceMax_K }) => faceMax_K), coldestStop_K: [] },
      ],
    } as unknown as CornerSpread,
  ],
};

function drawn(): SvgContext {
  const context = new SvgContext();
  const view = stintView(result, corner, [{ label: 'a', dash: 1, corner, laps: result.laps }], 376, 180);
  drawStint(context.asContext, view, PRINT_THEME, fanLayer(spread, corner, 0));
  return context;
}

describe('a context that keeps shapes', () => {
  it('knows all that the stint chart draws with', () => {
    const { shapes } = drawn();
    expect(shapes.length).toBeGreaterThan(20);
    expect(shapes.filter(({ d }) => /NaN|undefined|Infinity/.test(d))).toEqual([]);
    expect(shapes.some(({ dash }) => dash !== '')).toBe(true);
    expect(shapes.some(({ opacity }) => opacity < 1)).toBe(true);
  });

  it('rules what is too cold 6 px apart, 1.5 mm on paper', () => {
    const ruled = drawn().shapes.find(({ d }) => (d.match(/M/g)?.length ?? 0) > 8 && /^M38 /.test(d))!;
    const lines = [...ruled.d.matchAll(/M38 ([\d.]+)L/g)].map(([, y]) => Number(y));
    expect(lines.slice(1).map((y, i) => y - lines[i]!)).toEqual(lines.slice(1).map(() => 6));
  });

  it('cuts to the overlap of nested boxes, and no more once they are left', () => {
    const context = new SvgContext();
    const cut = (left: number): void => {
      context.save();
      context.beginPath();
      context.rect(left, 0, 10, 10);
      context.clip();
    };
    cut(0);
    cut(4);
    context.fillRect(0, 0, 20, 20);
    context.restore();
    context.restore();
    context.fillRect(0, 0, 20, 20);
    expect(context.shapes.map(({ clip }) => clip)).toEqual([{ left: 4, top: 0, width: 6, height: 10 }, null]);
  });

  it('begins a line where the first point is, and closes a circle', () => {
    const context = new SvgContext();
    context.beginPath();
    context.lineTo(1, 2);
    context.lineTo(3, 4);
    context.stroke();
    context.beginPath();
    context.arc(5, 5, 2);
    context.fill();
    expect(context.shapes.map(({ d }) => d)).toEqual(['M1 2L3 4', 'M3 5a2 2 0 1 0 4 0a2 2 0 1 0 -4 0Z']);
  });
});
