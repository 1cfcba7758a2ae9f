import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lapFrame, lapScale } from '../../../web/charts/lap-scale.ts';
import { lapNumbers } from '../../../web/charts/lap-numbers.ts';
import { restartKinds, sampleResult } from '../../support/sample-result.ts';

const { laps, clock } = sampleResult({ kinds: restartKinds });
const end_s = clock.time_s.at(-1) ?? 0;
const scale = lapScale(laps, end_s, [48, 548]);
const moment = fc.double({ min: 0, max: end_s, noNaN: true });

describe('the lap scale', () => {
  it('gives every lap the same width, however long it takes', () => {
    const widths = scale.laps.map(({ left, right }) => right - left);
    expect(Math.max(...widths) - Math.min(...widths)).toBeLessThan(1e-9);
    expect(scale.laps).toHaveLength(20);
  });

  it('never runs backwards', () => {
    fc.assert(
      fc.property(moment, moment, (a, b) => {
        expect(Math.sign(scale.xOf(b) - scale.xOf(a)) * Math.sign(b - a)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('comes back to the moment it started from', () => {
    fc.assert(
      fc.property(moment, (at) => {
        expect(scale.timeOf(scale.xOf(at))).toBeCloseTo(at, 6);
      }),
    );
  });

  it('squeezes the standing car into a short tail that ends the chart', () => {
    expect(scale.stands).toHaveLength(1);
    expect(scale.right).toBeCloseTo(548, 9);
    expect(scale.xOf(end_s)).toBeCloseTo(548, 9);
    expect(scale.stands[0]?.left).toBeCloseTo(scale.laps.at(-1)?.right ?? 0, 9);
  });

  it('leaves room for a stop between two laps', () => {
    const [first, second] = laps;
    if (!first || !second) throw new Error('laps: none');
    const later = { ...second, start_s: second.start_s + 60, end_s: second.end_s + 60 };
    const stopped = lapScale([first, later], later.end_s, [0, 218]);
    expect(stopped.stands).toEqual([
      {
        start_s: first.end_s,
        end_s: later.start_s,
        left: stopped.laps[0]?.right,
        right: stopped.laps[1]?.left,
      },
    ]);
  });

  it('holds a moment outside the stint at its end', () => {
    expect(scale.xOf(-5)).toBe(48);
    expect(scale.timeOf(9999)).toBe(end_s);
  });
});

describe('lap numbers', () => {
  it('always name the lap under the cursor and keep its neighbours away', () => {
    const narrow = lapScale(laps, end_s, lapFrame(340));
    const numbers = lapNumbers(narrow, laps[6]?.start_s ?? 0);
    expect(numbers.filter(({ isHere }) => isHere).map(({ lap }) => lap)).toEqual([7]);
    const gaps = numbers.slice(1).map(({ x }, i) => x - (numbers[i]?.x ?? 0));
    const beside = numbers.findIndex(({ isHere }) => isHere);
    expect(Math.min(gaps[beside - 1] ?? 99, gaps[beside] ?? 99)).toBeGreaterThanOrEqual(20);
  });

  it('name every lap where there is room', () => {
    expect(lapNumbers(scale, 0)).toHaveLength(20);
  });
});
