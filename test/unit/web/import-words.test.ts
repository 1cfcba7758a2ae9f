import { describe, expect, it } from 'vitest';
import type { TraceColumn, TraceLap, UnderstoodTrace } from '../../../engine/index.ts';
import {
  dayOf,
  extentOf,
  figures,
  fileDuration,
  fileSize,
  news,
  traceName,
} from '../../../web/pages/stint/import/words.ts';

const lap = (number: number, duration_s: number): TraceLap => ({
  lap: number,
  start_s: 0,
  duration_s,
  length_m: 4200,
  problem: '',
});

const understood: UnderstoodTrace = {
  delimiter: ',',
  decimal: '.',
  columns: [],
  firstRows: [],
  rows: 2001,
  duration_s: 200,
  lapsBy: 'column',
  laps: [lap(4, 96.4), lap(5, 103.6)],
  lap: 1,
  meanInterval_s: 0.1,
  mended: [],
  question: null,
  fingerprint: '',
};

const column = (low: number, high: number, unit: string): TraceColumn => ({
  name: 'Speed',
  role: 'speed',
  unit,
  units: [],
  unitReason: '',
  thumbnail: new Float64Array(),
  low,
  high,
});

const said = { name: 'log.csv', isBusy: false, failure: '', problems: [], reading: { understood } };

describe('the words of the import', () => {
  it('print three figures at most, and none that says nothing', () => {
    expect([0, 0.314, 12.44, 12, 287.6, -3].map(figures)).toEqual(['0', '0.31', '12.4', '12', '288', '−3']);
  });

  it('give the extent of a column in its unit, or say that it has none', () => {
    expect(extentOf(column(50, 250, 'km/h'))).toBe('50 to 250\u00a0km/h');
    expect(extentOf(column(12, 12, ''))).toBe('always 12');
    expect(extentOf(column(NaN, NaN, 'm'))).toBe('no numbers');
  });

  it('give the size of the file over all its laps', () => {
    expect(fileSize(understood)).toBe('2001 rows over 3:20.0 min and 8400\u00a0m, one every 0.1\u00a0s');
    expect(fileSize({ ...understood, laps: [], meanInterval_s: 0 })).toBe('2001 rows');
    expect(fileDuration(understood)).toBeCloseTo(200);
  });

  it('name the lap by its number where there are several', () => {
    expect(traceName('log.csv', understood)).toBe('log.csv, lap 5');
    expect(traceName('log.csv', { ...understood, laps: [lap(1, 90)], lap: 0 })).toBe('log.csv');
  });

  it('say what a person waits for, what is asked, and what was read', () => {
    expect(news({ ...said, isBusy: true })).toBe('Reading log.csv.');
    expect(news(said)).toBe('Read: 2001 rows, lap 5, 1:43.6, 4200\u00a0m.');
    expect(news({ ...said, reading: { understood: { ...understood, lap: null } } })).toBe(
      'Read: 2001 rows, no lap.',
    );
    expect(news({ ...said, problems: ['row 3'] })).toBe('Read, with problems.');
    const question = { text: 'One or two?', answers: [] };
    expect(news({ ...said, reading: { understood: { ...understood, question } } })).toBe(
      'Read. One question is open.',
    );
  });

  it('leave a failure and an unread file to the alert', () => {
    expect(news({ ...said, failure: 'Reading stopped twice.' })).toBe('');
    expect(news({ ...said, reading: null })).toBe('');
  });

  it('print the day of a correction', () => {
    expect(dayOf(new Date(2026, 10, 25, 12).getTime())).toBe('25 Nov');
  });
});
