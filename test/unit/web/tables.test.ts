import { afterEach, describe, expect, it } from 'vitest';
import { distanceNear, outlineIn } from '../../../web/charts/map-view.ts';
import {
  biteWords,
  cellsSummary,
  cursorWords,
  lapSummary,
  mapSummary,
  stintSummary,
  traceNote,
} from '../../../web/display/chart-summaries.ts';
import {
  cellText,
  fileRows,
  heading,
  lapColumns,
  sampleColumns,
} from '../../../web/display/table-columns.ts';
import { powerTicks } from '../../../web/display/ticks.ts';
import { followChoice } from '../../../web/display/units.ts';
import { sampleResult } from '../../support/sample-result.ts';

const result = sampleResult();
const [front, rear] = [result.corners[0]!, result.corners[1]!];
const lap = result.laps[9]!;
const columns = sampleColumns(result, front, lap);
const samples = [lap.firstSample, lap.firstSample + 7];

afterEach(() => followChoice(() => ''));

describe('a lap as a file', () => {
  it('names the unit in every heading and has one line a sample', () => {
    const [head, ...rows] = fileRows(columns, samples);
    expect(head!.slice(0, 5)).toEqual([
      'Time after the line, s',
      'Distance, m',
      'Speed, km/h',
      'Braking power of all four, kW',
      'Face, °C',
    ]);
    expect(head!.every((title) => /, (s|m|km\/h|kW|°C)$/.test(title))).toBe(true);
    expect(rows).toHaveLength(2);
    expect(rows[0]!.map(Number).some(Number.isNaN)).toBe(false);
    expect(Number(rows[1]![4])).toBeCloseTo(front.columns!.face_K[samples[1]!]! - 273.15, 1);
  });

  it('starts at the line with no way behind it and ends with all of it', () => {
    const distance = columns[1]!;
    const length_m = result.track.length_m;
    const clock = { ...result.clock, distance_m: result.clock.distance_m.slice() };
    clock.distance_m[lap.firstSample] = length_m - 0.4;
    clock.distance_m[lap.lastSample] = 0.4;
    const crossed = sampleColumns({ ...result, clock }, front, lap)[1]!;
    expect([crossed.of(lap.firstSample), crossed.of(lap.lastSample)]).toEqual([0, length_m]);
    expect(distance.of(samples[1]!)).toBe(result.clock.distance_m[samples[1]!]);
  });

  it('is in the units that were chosen', () => {
    const cold = Number(fileRows(columns, samples)[1]![4]);
    followChoice(() => '°F mph');
    const [head, first] = fileRows(columns, samples);
    expect(head!.slice(2, 5)).toEqual(['Speed, mph', 'Braking power of all four, kW', 'Face, °F']);
    expect(Number(first![4])).toBeCloseTo(cold * 1.8 + 32, 0);
  });

  it('is rounded to the doubt for the eye, and has nothing where there is nothing', () => {
    const face = columns[4]!;
    expect(Number(cellText(face, samples[0]!)) % 5).toBe(0);
    expect(heading(face)).toBe('Face,\u00a0°C');
    const still = { ...front.laps[0]!, coldestStop_K: null };
    const coldest = lapColumns.findIndex(({ name }) => name === 'Coldest stop');
    expect(cellText(lapColumns[coldest]!, still)).toBe('none');
    expect(fileRows(lapColumns, [still])[1]![coldest]).toBe('');
  });
});

describe('what a drawing shows, in a paragraph', () => {
  it('has the stint with its extremes, and both axles’ cells', () => {
    expect(stintSummary(front)).toMatch(
      /^Front face over 20 laps\. On the \d+ that count the face reaches \d+\s°C and the coldest hard stop starts at \d+\s°C\. The window is 400\s°C to 650\s°C\.$/,
    );
    expect(cellsSummary([front, rear])).toMatch(/^Front: .+\. Rear: .+\.$/);
  });

  it('has the lap with its stops, and the map with the hottest', () => {
    expect(lapSummary(front, lap)).toMatch(
      /^Lap\s10, push, 1:35\.0, front: 8 stops, 4 of them hard\. The hottest, at turn \d+, goes to \d+\s°C\. The coldest hard one, at turn \d+, starts at \d+\s°C, \d+\sK (above|below) bite\./,
    );
    expect(mapSummary(result, front, lap)).toMatch(/Hottest: turn \d+ \d+\s°C, turn/);
    expect(mapSummary(sampleResult({ hasMap: false }), front, lap)).toMatch(/^No map/);
    expect(traceNote('pinned 50 %')).toContain('Dashed: pinned 50 %.');
  });

  it('says how far from bite on which side', () => {
    expect(biteWords(front.window.bite_K + 66, front)).toBe('66\u00a0K above bite');
    expect(biteWords(front.window.bite_K - 12, front)).toBe('12\u00a0K below bite');
  });

  it('says what the cursor is on: the stop, the face, and how far out', () => {
    const stop = front.stops.find((each) => each.lap === 10 && each.hard)!;
    const words = (face_K: number): string => {
      const columns_ = { ...front.columns!, face_K: new Float64Array([face_K]) };
      return cursorWords('lap 10, 20 seconds', { ...front, columns: columns_ }, 0, stop.start_s);
    };
    expect(words(800)).toMatch(/^lap 10, 20 seconds, hard stop at turn 1; front face 525\s°C$/);
    expect(words(front.window.facePeak_K + 10)).toMatch(/, 10\sK over its limit$/);
    expect(words(front.window.bite_K - 20)).toMatch(/, 20\sK below bite$/);
  });
});

describe('pointing at the circuit', () => {
  const line = outlineIn(result.track, 220, 150)!;

  it('finds the place of the road that is pointed at, and none far from it', () => {
    const at = line[120]!;
    expect(distanceNear(line, at)).toBe(at.distance_m);
    expect(distanceNear(line, { x: at.x + 3, y: at.y + 2 })).toBeGreaterThan(0);
    expect(distanceNear(line, { x: -200, y: -200 })).toBeNull();
    expect(distanceNear([], at)).toBeNull();
  });
});

describe('marks of power', () => {
  it.each([60e3, 150e3, 450e3, 1.4e6, 2.5e6])('are one or two up to %d W', (high) => {
    const marks = powerTicks(high);
    expect(marks.length).toBeGreaterThanOrEqual(1);
    expect(marks.length).toBeLessThanOrEqual(2);
    expect(marks.every(({ at }) => at <= high)).toBe(true);
  });
});
