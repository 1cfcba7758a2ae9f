import { describe, expect, it } from 'vitest';
import { timeOf, typedTime, typedTimes, withStart } from '../../../web/pages/stint/import/lap-times.ts';

describe('starts of laps, typed', () => {
  it('may be seconds or minutes', () => {
    expect(typedTimes('0, 96.4, 3:12.7', 400)).toEqual({ times_s: [0, 96.4, 192.7], errors: [] });
  });

  it('may have decimal commas between semicolons', () => {
    expect(typedTimes('0; 96,4; 3:12,7', 400).times_s).toEqual([0, 96.4, 192.7]);
  });

  it('may carry their unit', () => {
    expect(typedTimes('0 s, 96.4s, 3:12 min', 400).times_s).toEqual([0, 96.4, 192]);
  });

  it('get one error for each bad entry', () => {
    const { errors } = typedTimes('0, fast, 96.4, 20, 96.4, 900', 400);
    expect(errors).toEqual([
      '“fast” is no time: expected seconds (96.4) or minutes (1:36.4).',
      '“20” comes before 1:36.4: expected times in order.',
      '“96.4” is there twice.',
      '“900” is not inside the file, which ends at 6:40.',
    ]);
  });

  it('are asked for when there are none', () => {
    expect(typedTimes(' , ', 400).errors).toEqual(['Expected at least one start, such as 0 or 1:36.4.']);
  });

  it('are no time with more than 59 seconds after a minute, a sign or a letter', () => {
    expect(['1:75', '-3', '1e3', '', '1:2:3:4'].map(timeOf)).toEqual([null, null, null, null, null]);
    expect(timeOf('1:02:03.5')).toBe(3723.5);
  });

  it('are printed as exactly as they need', () => {
    expect([0, 60, 96.4, 192.125].map(typedTime)).toEqual(['0:00', '1:00', '1:36.4', '3:12.125']);
  });

  it('are read back as they were printed', () => {
    for (const time_s of [0, 0.1, 59.9, 60, 96.4, 3599.999])
      expect(timeOf(typedTime(time_s))).toBeCloseTo(time_s, 6);
  });

  it('stand in order and once when one is added', () => {
    expect(withStart([0, 96.4], 50)).toEqual([0, 50, 96.4]);
    expect(withStart([0, 96.4], 96.4)).toEqual([0, 96.4]);
  });
});
