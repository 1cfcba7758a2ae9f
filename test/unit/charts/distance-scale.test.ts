import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceScale } from '../../../web/charts/distance-scale.ts';
import { sampleResult } from '../../support/sample-result.ts';

const { laps, clock, track } = sampleResult();
const lap = laps[4];
if (!lap) throw new Error('laps: none');
const scale = distanceScale(clock, lap, track.length_m, [48, 648]);

describe('the distance scale of a lap', () => {
  it('starts at the line and ends at the line', () => {
    expect(scale.xOf(lap.start_s)).toBeCloseTo(48, 6);
    expect(scale.xAt(track.length_m)).toBe(648);
  });

  it('comes back to the moment it started from', () => {
    const last_s = clock.time_s[lap.lastSample] ?? 0;
    const moment = fc.double({ min: lap.start_s, max: last_s, noNaN: true });
    fc.assert(
      fc.property(moment, (at) => {
        expect(scale.timeOf(scale.xOf(at))).toBeCloseTo(at, 6);
      }),
    );
  });

  it('holds moments of other laps at its ends', () => {
    expect(scale.distanceOf(0)).toBe(0);
    expect(scale.xOf(1e6)).toBe(scale.xOfSample(lap.lastSample));
  });

  it('reads a first sample that still carries the length of the lap before as the line', () => {
    const distance_m = clock.distance_m.slice();
    distance_m[lap.firstSample] = track.length_m;
    distance_m[lap.lastSample] = 0;
    const shifted = distanceScale({ ...clock, distance_m }, lap, track.length_m, [0, 100]);
    expect(shifted.xOfSample(lap.firstSample)).toBe(0);
    expect(shifted.xOfSample(lap.lastSample)).toBe(100);
  });
});
