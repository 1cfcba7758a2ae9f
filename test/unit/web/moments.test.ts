import { describe, expect, it } from 'vitest';
import { firstLook, lapAt, marksOf, nextMark, sampleAt } from '../../../web/state/moments.ts';
import { sampleResult } from '../../support/sample-result.ts';

const times = Float64Array.from([0, 1, 2.5, 4]);

describe('the sample at a time', () => {
  it.each([
    [-1, 0],
    [0, 0],
    [0.99, 0],
    [1, 1],
    [3, 2],
    [4, 3],
    [99, 3],
  ])('at %d s is number %d', (time_s, index) => {
    expect(sampleAt(times, time_s)).toBe(index);
  });

  it('is 0 of no samples at all', () => {
    expect(sampleAt(new Float64Array(), 3)).toBe(0);
  });
});

describe('marks on the clock', () => {
  it('are passed one by one in either direction', () => {
    expect(nextMark([0, 10, 20], 10, 1)).toBe(20);
    expect(nextMark([0, 10, 20], 10, -1)).toBe(0);
    expect(nextMark([0, 10, 20], 12, -1)).toBe(10);
  });

  it('end', () => {
    expect(nextMark([0, 10], 10, 1)).toBeNull();
    expect(nextMark([0, 10], 0, -1)).toBeNull();
  });

  it('are the starts of laps with the end of the stint, or the starts of stops', () => {
    const result = sampleResult();
    expect(marksOf(result, 'lap')).toHaveLength(result.laps.length + 1);
    expect(marksOf(result, 'stop')[0]).toBe(result.corners[0]?.stops[0]?.start_s);
  });
});

describe('the lap at a time', () => {
  it('is the last one that has begun, also while the car stands after it', () => {
    const { laps } = sampleResult({ stand_s: 100 });
    expect(lapAt(laps, 0)?.lap).toBe(1);
    expect(lapAt(laps, laps[4]!.start_s)?.lap).toBe(5);
    expect(lapAt(laps, 1e9)?.lap).toBe(20);
  });
});

describe('the first look', () => {
  it('is the hottest moment of the lap that decides the hot side of the front', () => {
    const result = sampleResult();
    const front = result.corners[0]!;
    const sample = sampleAt(result.clock.time_s, firstLook(result));
    expect(front.columns?.face_K[sample]).toBe(front.laps[front.verdict.hotLap - 1]?.faceMax_K);
  });
});
