import { describe, expect, it } from 'vitest';
import type { TraceColumn, TraceLap, UnderstoodTrace } from '../../../engine/index.ts';
import {
  dayOf,
  extentOf,
  figures,
  fileSize,
  firstOf,
  news,
  oneAtATime,
  setRight,
  shownCell,
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

const said = {
  name: 'log.csv',
  isBusy: false,
  failure: '',
  problems: [],
  others: [],
  reading: { understood },
};

describe('the words of the import', () => {
  it('print three figures at most, and none that says nothing', () => {
    expect([0, 0.314, 12.44, 12, 287.6, -3].map(figures)).toEqual(['0', '0.31', '12.4', '12', '288', '−3']);
  });

  it('give the extent of a column in its unit, or say that it has none', () => {
    expect(extentOf(column(50, 250, 'km/h'))).toBe('50 to 250\u00a0km/h');
    expect(extentOf(column(12, 12, ''))).toBe('always 12');
    expect(extentOf(column(NaN, NaN, 'm'))).toBe('no numbers');
    expect(extentOf(column(50_000.4, 86_399, 'hh:mm:ss'))).toBe('13:53:20 to 23:59:59');
    expect(extentOf(column(1_900_000_000, 1_900_000_098, 'date and time'))).toBe('17:46:40 to 17:48:18');
  });

  it('give the size of the file over all its laps', () => {
    expect(fileSize(understood)).toBe(
      '2\u00a0001 rows over 3:20.0 min and 8\u00a0400\u00a0m, one every 0.1\u00a0s',
    );
    expect(fileSize({ ...understood, laps: [], meanInterval_s: 0 })).toBe('2\u00a0001 rows');
  });

  it('give the whole span of the file, holes and pieces left out included', () => {
    expect(fileSize({ ...understood, duration_s: 300 })).toContain('over 5:00.0 min');
  });

  it('part thousands by a space as the sentences of the reader do', () => {
    expect([999, 1000, 12345.6, -54321].map(figures)).toEqual([
      '999',
      '1\u00a0000',
      '12\u00a0346',
      '\u221254\u00a0321',
    ]);
  });

  it('give a negative cell a true minus sign, and leave dashes alone', () => {
    expect(['-3.5', '-.5', '-', '2026-11-25', '7'].map(shownCell)).toEqual([
      '\u22123.5',
      '\u2212.5',
      '-',
      '2026-11-25',
      '7',
    ]);
  });

  it('list what was set right with the units that are not the stated ones', () => {
    const speed = { ...column(0, 90, 'm/s'), unitReason: 'no unit given: read as m/s' };
    expect(setRight({ ...understood, mended: ['2 rows left out'], columns: [speed] })).toEqual([
      '2 rows left out',
      'Speed: no unit given: read as m/s',
    ]);
  });

  it('show the first of many lines and count the others', () => {
    const lines = ['a', 'b', 'c', 'd'];
    expect(firstOf(lines, 5)).toEqual({ first: lines, others: [], more: 0 });
    expect(firstOf(lines, 3)).toEqual({ first: ['a', 'b', 'c'], others: ['d'], more: 1 });
  });

  it('count lines that the reader did not list', () => {
    expect(firstOf(['a', 'b', 'c', 'and 41 more'], 2).more).toBe(42);
  });

  it('say which of several files is read', () => {
    expect(oneAtATime('a.csv', [])).toBe('');
    expect(oneAtATime('a.csv', ['b.csv'])).toBe('One file is read at a time: a.csv is read, b.csv is not.');
    expect(oneAtATime('a.csv', ['b.csv', 'c.csv', 'd.csv'])).toBe(
      'One file is read at a time: a.csv is read, b.csv, c.csv and d.csv are not.',
    );
  });

  it('name the lap by its number where there are several', () => {
    expect(traceName('log.csv', understood)).toBe('log.csv, lap 5');
    expect(traceName('log.csv', { ...understood, laps: [lap(1, 90)], lap: 0 })).toBe('log.csv');
  });

  it('say what a person waits for, what is asked, and what was read', () => {
    expect(news({ ...said, isBusy: true })).toBe('Reading log.csv.');
    expect(news(said)).toBe('Read: 2\u00a0001 rows, lap 5, 1:43.6, 4\u00a0200\u00a0m.');
    expect(news({ ...said, reading: { understood: { ...understood, lap: null } } })).toBe(
      'Read: 2\u00a0001 rows, no lap.',
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
