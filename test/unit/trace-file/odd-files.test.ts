import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { decodeText } from '../../../engine/shell/decode-text.ts';
import { readTrace } from '../../../engine/trace-file/read-trace.ts';
import { kmhFromMps } from '../../../engine/units.ts';
import type { TraceChoices, TraceReading } from '../../../engine/index.ts';
import { root } from '../../support/tree.ts';

/** All fixtures log the same 13.9 s at 10 Hz: 200 km/h give or take 40, over 781 m. */
const RUN = { top_kmh: 240, length_m: 781, duration_s: 13.9 };

const bytesOf = (file: string): ArrayBuffer =>
  new Uint8Array(readFileSync(`${root}test/fixtures/traces/${file}`)).buffer;

function read(file: string, choices: TraceChoices = {}): TraceReading {
  const decoded = decodeText(bytesOf(file));
  if (!('text' in decoded)) return { problems: [decoded.problem], understood: null, columns: null };
  return readTrace(decoded.text, choices);
}

/** A column as understood: its role, its unit. */
const rolesOf = ({ understood }: TraceReading): string[] =>
  understood!.columns.map(({ role, unit }) => (unit ? `${role ?? 'none'} ${unit}` : (role ?? 'none')));
const spaced = (text: string): string => text.replaceAll('\u00A0', ' ');

interface Readable {
  format: string;
  roles: string[];
  mended?: string[];
  reasons?: string[];
  rows?: number;
}

const READABLE: Record<string, Readable> = {
  'semicolon-decimal-comma-headerless.csv': {
    format: ';,',
    roles: ['time s', 'speed km/h'],
    reasons: ['no unit given: read as s', 'no unit given: read as km/h, which alone fits its highest'],
  },
  'quoted-decimal-comma.csv': { format: ',,', roles: ['time s', 'speed km/h'] },
  'decimal-comma-in-comma-file.csv': { format: ',,', roles: ['time s', 'speed km/h'] },
  'tabs-cr-only-bom.txt': { format: '\t.', roles: ['time s', 'speed km/h'] },
  'pipes-crlf.txt': { format: '|.', roles: ['time s', 'distance m', 'speed mph'] },
  'runs-of-spaces.txt': { format: ' .', roles: ['time s', 'speed km/h'] },
  'utf-16-le-mark.csv': { format: ';,', roles: ['time s', 'speed km/h'] },
  'utf-16-be-no-mark.csv': {
    format: ',.',
    roles: ['time s', 'speed km/h'],
    reasons: ['no unit given: read as s'],
  },
  'windows-1252.csv': { format: ';,', roles: ['time s', 'speed km/h', 'none °C', 'altitude m'] },
  'preamble-trailing-delimiter.csv': { format: ',.', roles: ['time s', 'speed km/h'] },
  'header-repeated.csv': {
    format: ',.',
    roles: ['time s', 'speed km/h'],
    mended: ['2 repeated headers left out (first row 73)', '1 row without numbers left out (row 145)'],
  },
  'holes-of-one-row.csv': {
    format: ',.',
    roles: ['time s', 'speed km/h'],
    rows: 133,
    mended: [
      '1 row with more cells than columns left out (row 73)',
      '1 row with fewer cells than columns; what is missing counts as blank (row 63)',
      '6 rows without a speed left out (first row 13)',
    ],
  },
  'headerless.csv': {
    format: ',.',
    roles: ['time s', 'speed km/h', 'distance m', 'none'],
    reasons: ['s', 'km/h', 'm'].map(
      (unit) => `no unit given: read as ${unit}, so that speed over time makes the distance`,
    ),
  },
  'times-hms-over-midnight.csv': {
    format: ';,',
    roles: ['time hh:mm:ss', 'speed km/h'],
    mended: ['Uhrzeit passes midnight: read on'],
  },
  'times-mm-ss.csv': { format: ',.', roles: ['time hh:mm:ss', 'speed km/h'] },
  'times-iso.csv': { format: ',.', roles: ['time date and time', 'speed m/s'] },
  'counter-wraps-16-bit.csv': {
    format: ',.',
    roles: ['none ms', 'time ms', 'speed km/h'],
    mended: ['Time starts again once after 65.536 s: read as a counter that wraps'],
  },
  'milliseconds-called-seconds.csv': {
    format: ',.',
    roles: ['time ms', 'speed km/h'],
    reasons: ['stated s, but rows would be 100 s apart: read as ms'],
  },
  'mph-called-kmh.csv': {
    format: ',.',
    roles: ['time s', 'distance m', 'speed mph'],
    reasons: ['stated km/h, but speed over time makes 485 m where the distance says 781 m: read as mph'],
  },
  'metres-called-km.csv': {
    format: ',.',
    roles: ['time s', 'distance m', 'speed km/h'],
    reasons: ['stated km, but speed over time makes 781 m where the distance says 780 720 m: read as m'],
  },
  'speed-in-knots.csv': { format: ',.', roles: ['time s', 'speed kn'] },
  'times-twice-and-late.csv': {
    format: ',.',
    roles: ['time s', 'speed km/h'],
    rows: 138,
    mended: [
      '1 row with the time of the row before left out (row 33)',
      '1 row earlier than the row before left out (row 63)',
    ],
  },
  'numbers-with-units.csv': { format: ',.', roles: ['time s', 'speed km/h'] },
  'blank-lines.csv': { format: ',.', roles: ['time s', 'speed km/h'] },
  'thousands-marked.csv': { format: ';,', roles: ['time s', 'distance m', 'speed km/h'] },
  'date-and-time-in-spaces.txt': { format: ' .', roles: ['none', 'time hh:mm:ss', 'speed km/h'] },
  'twelve-hour-clock.csv': { format: ',.', roles: ['time hh:mm:ss', 'speed km/h'] },
  'days-of-a-spreadsheet.csv': {
    format: ',.',
    roles: ['time d', 'speed km/h'],
    reasons: ['no unit given: read as d'],
  },
  'time-spike.csv': {
    format: ',.',
    roles: ['time s', 'speed km/h'],
    rows: 139,
    mended: ['1 row far ahead of the rows around left out (row 42)'],
  },
  'thousands-that-are-no-numbers.csv': {
    format: ';.',
    roles: ['time s', 'distance m', 'speed km/h'],
    mended: ["Distance: expected numbers, got '1,000'; not used"],
  },
  'acceleration-backwards.csv': {
    format: ',.',
    roles: [
      'time s',
      'speed km/h',
      'acceleration g',
      'front brake pressure bar',
      'rear brake pressure psi',
      'slope %',
      'altitude m',
    ],
    reasons: ['no unit given: read as %'],
    mended: [
      'Long Acc counts braking as positive: turned round',
      'Brake Press Front rests at -0.60 bar: taken as nothing',
    ],
  },
};

describe('an odd file that can be read', () => {
  it.each(Object.entries(READABLE))('%s gives its lap, and says what was set right', (file, expected) => {
    const reading = read(file);
    const { columns, understood, problems } = reading;
    expect(problems).toEqual([]);
    expect(understood!.question).toBeNull();
    expect(understood!.delimiter + understood!.decimal).toBe(expected.format);
    expect(rolesOf(reading)).toEqual(expected.roles);
    expect(understood!.mended.map(spaced)).toEqual(expected.mended ?? []);
    const reasons = understood!.columns.map(({ unitReason }) => spaced(unitReason)).filter(Boolean);
    expect(reasons).toEqual(expected.reasons ?? []);
    expect(understood!.laps).toHaveLength(1);
    expect(Math.abs(understood!.laps[0]!.length_m - RUN.length_m)).toBeLessThan(1.5);
    expect(understood!.laps[0]!.duration_s).toBeCloseTo(RUN.duration_s, 3);
    expect(columns!.speed_mps).toHaveLength(expected.rows ?? 140);
    expect(Math.abs(kmhFromMps(Math.max(...columns!.speed_mps)) - RUN.top_kmh)).toBeLessThan(0.2);
    expect(columns!.time_s![0]).toBe(0);
  });
});

const REFUSED: Record<string, string[]> = {
  'empty.csv': ['file: it is empty'],
  'words.txt': ['file: expected rows of numbers, cells parted by comma, semicolon, tab, bar or spaces'],
  'one-column.csv': ['file: expected rows of numbers, cells parted by comma, semicolon, tab, bar or spaces'],
  'spreadsheet.xlsx': ['file: it is a spreadsheet, an archive or a document; save it as text (CSV) first'],
  'binary.bin': ['file: it is not text; export it from the logger as text (CSV) first'],
  'headerless-two-speeds.csv': [
    'header: no column is seen as a speed; say which it is: column 1, column 2 or column 3',
  ],
  'no-speed.csv': ['header: no column is named as a speed; say which it is: Time, RPM or Gear'],
  'few-rows.csv': [
    'expected at least 50 rows in a lap, got 30',
    'expected a lap of at least 500 m, got 183 m',
  ],
  'gap.csv': ['nothing for 3.3 s from 4.9 s'],
  'text-in-a-cell.csv': ["row 41, column Speed: expected a number, got 'fast'"],
  'speed-of-no-car.csv': ['row 41, column Speed: expected 0 to 400 km/h, got 655.35 km/h'],
  'minus-one-while-driving.csv': ['nothing for 2.0 s from 3.0 s'],
  'runs-backwards.csv': ['column Time: it runs backwards; put the rows in the order of time'],
  'both-decimal-marks.csv': [
    'file: some of its numbers have a decimal point and some a decimal comma; only one can be read',
  ],
  'web-page.html': ['file: it is no table of rows; export it from the logger as text (CSV) first'],
  'time-jumps-back.csv': ['row 73, column Time: it jumps back from 6.9 s to 3.5 s after the first row'],
};

describe('a broken file', () => {
  it.each(Object.entries(REFUSED))('%s is refused in plain sentences', (file, sentences) => {
    const { problems, columns } = read(file);
    expect(problems.map(spaced)).toEqual(sentences);
    expect(columns).toBeNull();
  });
});

describe('a file with two readings', () => {
  it('asks whether a comma makes one number or two, and each answer settles it', () => {
    const file = 'comma-decimals-headerless.csv';
    const { understood, columns, problems } = read(file);
    expect(understood!.question!.text).toBe('Is 0,1 one number or two?');
    expect([problems, columns]).toEqual([[], null]);
    const [one, two] = understood!.question!.answers.map(({ text, choices }) => ({
      text,
      reading: read(file, choices),
    }));
    expect([one!.text, two!.text]).toEqual(['One: 0.1', 'Two: 0 and 1']);
    expect(rolesOf(one!.reading)).toEqual(['time s', 'speed km/h']);
    expect(one!.reading.columns!.speed_mps).toHaveLength(140);
    expect(two!.reading.understood!.question).toBeNull();
    expect(two!.reading.understood!.columns).toHaveLength(4);
  });

  it('asks for a unit of the speed where more than one fits, and each answer settles it', () => {
    const file = 'speed-without-unit.csv';
    const { question } = read(file).understood!;
    expect(question!.text).toBe('Is the speed in km/h or mph? Its highest is 149.12.');
    expect(question!.answers.map(({ text }) => spaced(text))).toEqual(['km/h', 'mph, up to 240 km/h']);
    const [kmh, mph] = question!.answers.map(({ choices }) => read(file, choices));
    expect(mph!.columns!.speed_mps).toHaveLength(140);
    expect(kmh!.problems.map(spaced)).toEqual(['expected a lap of at least 500 m, got 485 m']);
  });
});

describe('laps', () => {
  it.each([
    ['laps-by-column.csv', 'column', [0, 1, 2, 3]],
    ['laps-by-distance.csv', 'distance', [1, 2, 3, 4]],
  ])('%s gives the fastest whole one, and says of the others why not', (file, lapsBy, numbers) => {
    const { understood, columns } = read(file);
    expect(understood!.lapsBy).toBe(lapsBy);
    expect(understood!.laps.map(({ lap }) => lap)).toEqual(numbers);
    expect(understood!.lap).toBe(2);
    const problems = understood!.laps.map(({ problem }) => spaced(problem));
    expect(problems[0]).toMatch(/^expected a lap of at least 500 m, got 3\d\d m$/);
    expect(problems.slice(1, 3)).toEqual(['', '']);
    expect(problems[3]).toMatch(/^not a whole lap: 515 m where whole ones have 78\d m$/);
    expect(columns!.distance_m![0]).toBe(0);
    const other = read(file, { lap: 1 });
    expect(other.columns!.time_s!.at(-1)).toBeGreaterThan(columns!.time_s!.at(-1)!);
    expect(read(file, { lap: 3 }).problems.map(spaced)).toEqual([problems[3]]);
  });
});
