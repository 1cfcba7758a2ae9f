import { describe, expect, it } from 'vitest';
import type { CornerSpread } from '../../../engine/index.ts';
import { quantile, quantilesOf } from '../../../engine/advise/quantiles.ts';
import { fanView } from '../../../web/charts/fan-view.ts';
import { smallStint } from '../../../web/charts/small-stint.ts';
import { stintView } from '../../../web/charts/stint-view.ts';
import { sampleResult } from '../../support/sample-result.ts';

const result = sampleResult();
const front = result.corners[0]!;
const view = stintView(result, front, [], 640, 240);

/** Twenty draws about the run itself; lap 7 has no hard stop in any. */
const stints = Array.from({ length: 20 }, (_, i): CornerSpread['stints'][number] => ({
  status: 'in',
  facePeak_K: front.laps.map(({ faceMax_K }) => faceMax_K + 4 * ((i * 7) % 20) - 40),
  coldestStop_K: front.laps.map(({ coldestStop_K }, lap) =>
    lap === 6 || coldestStop_K === null ? null : coldestStop_K + 3 * ((i * 11) % 20) - 30,
  ),
}));
const spread = {
  laps: front.laps.map(({ lap }, i) => {
    const cold = stints.flatMap(({ coldestStop_K }) => coldestStop_K[i] ?? []);
    return {
      lap,
      counted: true,
      facePeak_K: quantilesOf(stints.map(({ facePeak_K }) => facePeak_K[i]!)),
      coldestStop_K: cold.length > 0 ? quantilesOf(cold) : null,
    };
  }),
  stints,
} as unknown as CornerSpread;

describe('the fan', () => {
  const fan = fanView(spread, view, null);

  it('runs from lap to lap, its low edge under its high one', () => {
    expect(fan.peak.low).toHaveLength(front.laps.length);
    fan.peak.low.forEach(({ x, y }, i) => {
      expect(x).toBe(view.x.laps[i]!.middle);
      expect(y).toBeGreaterThan(fan.peak.high[i]!.y);
    });
  });

  it('holds the middle 80 % of what sorting gives', () => {
    const lap = 9;
    const sorted = stints.map(({ facePeak_K }) => facePeak_K[lap]!).sort((a, b) => a - b);
    expect(fan.peak.low[lap]!.y).toBeCloseTo(view.y.of(quantile(sorted, 0.1)), 9);
    expect(fan.peak.high[lap]!.y).toBeCloseTo(view.y.of(quantile(sorted, 0.9)), 9);
    const inside = sorted.filter((value) => view.y.of(value) <= fan.peak.low[lap]!.y).length;
    expect(inside).toBe(18);
  });

  it('breaks where no draw has a hard stop', () => {
    expect(fan.coldest.length).toBeGreaterThanOrEqual(2);
    const broken = view.x.laps[6]!.middle;
    expect(fan.coldest.flatMap(({ low }) => low).some(({ x }) => x === broken)).toBe(false);
  });

  it('shows one draw as it was run', () => {
    expect(fan.drawn).toBeNull();
    const { drawn } = fanView(spread, view, 4);
    expect(drawn!.peak.map(({ y }) => y)).toEqual(stints[4]!.facePeak_K.map((value) => view.y.of(value)));
    expect(drawn!.coldest.length).toBe(fan.coldest.length);
    expect(fanView(spread, view, 99).drawn).toBeNull();
  });
});

describe('a small stint', () => {
  it('lies between the limits where the draw does, broken where a lap has no hard stop', () => {
    const window = { bite_K: 673, facePeak_K: 923 };
    const small = smallStint(
      { status: 'in', facePeak_K: [900, 910, 905], coldestStop_K: [690, null, 700] },
      window,
    );
    expect(small.peak.match(/[ML]/g)).toEqual(['M', 'L', 'L']);
    expect(small.coldest.match(/[ML]/g)).toEqual(['M', 'M']);
    expect(small.hot).toBeLessThan(small.cold);
  });
});
