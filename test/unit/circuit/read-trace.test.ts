import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readTrace, type TraceReading } from '../../../engine/circuit/read-trace.ts';
import { mpsFromKmh } from '../../../engine/units.ts';
import { root } from '../../support/tree.ts';

/** A lap of 100 s at 50 m/s, give or take, in km/h. */
const lap = (rows = 201): { t: number; d: number; kmh: number }[] =>
  Array.from({ length: rows }, (_, i) => ({ t: i / 2, d: i * 25, kmh: 180 + 20 * Math.sin(i / 10) }));
const csv = (head: string[], row: (sample: ReturnType<typeof lap>[number], i: number) => string): string =>
  [...head, ...lap().map(row)].join('\n') + '\n';
const plain = csv(['time_s,speed_kmh'], ({ t, kmh }) => `${t.toFixed(1)},${kmh.toFixed(2)}`);

function read(text: string): Extract<TraceReading, { ok: true }> {
  const reading = readTrace(text);
  if (!reading.ok) throw new Error(reading.problems.join('\n'));
  return reading;
}
function problems(text: string): string[] {
  const reading = readTrace(text);
  return reading.ok ? [] : reading.problems;
}

describe('a well-formed file', () => {
  it('with comma and unit suffixes becomes SI columns', () => {
    const { columns, understood } = read(plain);
    expect(columns.speed_mps[0]).toBeCloseTo(50, 9);
    expect(columns.time_s!.at(-1)).toBe(100);
    expect(understood).toMatchObject({ delimiter: ',', decimal: '.', rows: 201, duration_s: 100, lap: null });
    expect(understood.meanInterval_s).toBeCloseTo(0.5, 9);
    expect(understood.firstRows[0]).toEqual(['0.0', '180.00']);
  });

  it('with semicolon and decimal comma is not taken for commas', () => {
    const text = plain.replaceAll(',', ';').replaceAll('.', ',');
    const { columns, understood } = read(text);
    expect(understood).toMatchObject({ delimiter: ';', decimal: ',' });
    expect(columns).toEqual(read(plain).columns);
  });

  it('with tabs, carriage returns and a byte order mark reads the same', () => {
    const text = '\uFEFF' + plain.replaceAll(',', '\t').replaceAll('\n', '\r\n');
    expect(read(text).columns).toEqual(read(plain).columns);
    expect(read(text.replaceAll('\r\n', '\r')).columns).toEqual(read(plain).columns);
  });

  it.each([
    ['Speed (km/h)', mpsFromKmh(180)],
    ['speed [mph]', 80.4672],
    ['Speed [m/s]', 180],
    ['speed_mps', 180],
    ['GPS Speed (kph)', 50],
  ])('knows the unit of %s', (name, expected) => {
    const slow = plain.replace('speed_kmh', name);
    const text = expected === 180 ? slow.replace(/,(1|2)(\d\d\.\d\d)/g, ',0$2') : slow;
    const first = read(text).columns.speed_mps[0]!;
    expect(first).toBeCloseTo(expected === 180 ? 80 : expected, 6);
  });

  it('takes units from a row below the names, after a preamble with commas', () => {
    const head = ['Invented log, not a real car', 'Driver,nobody', '', 'Time,Speed', 's,mph'];
    const { columns, understood } = read(csv(head, ({ t, kmh }) => `${t},${kmh / 1.609344}`));
    expect(columns.speed_mps[0]).toBeCloseTo(50, 9);
    expect(understood.columns).toEqual([
      { name: 'Time', unit: 's', role: 'time' },
      { name: 'Speed', unit: 'mph', role: 'speed' },
    ]);
  });

  it('takes distance in km, and leaves columns it does not know', () => {
    const text = csv(['Dist (km),Gear,Speed (km/h),Slope (%)'], ({ d, kmh }) => `${d / 1000},4,${kmh},-2`);
    const { columns, understood } = read(text);
    expect(columns.distance_m!.at(-1)).toBe(5000);
    expect(columns.slope![0]).toBeCloseTo(-0.02, 12);
    expect(columns.time_s).toBeUndefined();
    expect(understood.columns[1]).toEqual({ name: 'Gear', unit: '', role: null });
  });

  it('with several laps uses the fastest complete one and says so', () => {
    const laps = [
      { number: 0, scale: 2, rows: 60 },
      { number: 1, scale: 1.1, rows: 201 },
      { number: 2, scale: 1, rows: 201 },
      { number: 3, scale: 1, rows: 90 },
    ];
    let t = 0;
    const rows = laps.flatMap(({ number, scale, rows: n }) =>
      lap(n).map(({ kmh }) => `${(t += scale / 2).toFixed(3)},${number},${kmh / scale}`),
    );
    const { understood, columns } = read(['time_s,Lap,speed_kmh', ...rows].join('\n'));
    expect(understood.lap).toEqual({ number: 2, of: 4 });
    expect(columns.speed_mps.length).toBe(201);
  });
});

describe('a bad file', () => {
  it('names row and column of a cell that is not a number', () => {
    expect(problems(plain.replace('7.5,', '7.5,abc'))).toEqual([
      "row 17, column speed: expected a number, got 'abc199.95'",
    ]);
  });

  it('names the row where time stands still', () => {
    expect(problems(plain.replace('\n8.0,', '\n7.5,'))).toEqual([
      'row 18, column time: expected more than 7.5, got 7.5',
    ]);
  });

  it('names a speed that no car has', () => {
    const text = plain.replace(/\n8\.0,.*/, '\n8.0,512');
    expect(problems(text)).toEqual(['row 18, column speed: expected 0 to 400 km/h, got 512 kmh']);
  });

  it('says all at once, and counts what it does not list', () => {
    const text = plain.replaceAll(/\n(\d\d+)\.5,.*/g, '\n$1.5,x');
    const found = problems(text);
    expect(found.length).toBe(21);
    expect(found.at(-1)).toBe('and 70 more');
  });

  it('wants a unit for the speed', () => {
    const found = problems(plain.replace('speed_kmh', 'Speed'));
    expect(found[0]).toMatch(/^column Speed: expected a unit of km\/h, .*m\/s.*, got ''$/);
  });

  it('wants a header, a speed, and a time or a distance', () => {
    expect(problems(plain.replace('time_s,speed_kmh\n', ''))[0]).toMatch(/^header: expected a row/);
    expect(problems(plain.replace('speed_kmh', 'rpm'))[0]).toMatch(/^header: expected a column named speed/);
    expect(problems(plain.replace('time_s', 'index'))[0]).toMatch(/^header: expected .* time or distance/);
  });

  it('wants 50 rows and a lap of plausible length', () => {
    const few = plain.split('\n').slice(0, 31).join('\n');
    expect(problems(few)).toEqual(['rows: expected at least 50 in one lap, got 30']);
    const short = csv(['time_s,speed_kmh'], ({ t }) => `${t},9`);
    expect(problems(short)[0]).toMatch(/^lap length: expected 500 to 30000 m, got 250 m$/);
  });

  it('notices a wrong unit where speed and distance disagree', () => {
    const text = csv(['time_s,distance_m,speed_mph'], ({ t, d, kmh }) => `${t},${d},${kmh}`);
    expect(problems(text)[0]).toMatch(/wrong unit/);
  });

  it('does not bridge a gap in which a stop could hide', () => {
    const lines = plain.split('\n');
    const text = [...lines.slice(0, 50), ...lines.slice(60)].join('\n');
    expect(problems(text)).toEqual(['row 51: nothing for 5.5 s before it']);
  });

  it('of other kinds is refused in a sentence', () => {
    for (const text of ['', 'hello', '{"a": 1}', '1\n2\n3\n4\n5\n6']) {
      expect(problems(text)[0]).toMatch(/^file: expected rows of numbers/);
    }
  });
});

describe('the traces that ship', () => {
  it.each([
    ['sorrelby-heavy', ',', 5300, 98.0],
    ['tibbinlow-light', ';', 2394, 85],
  ])('%s reads as one lap and calls itself invented', (name, delimiter, length_m, duration_s) => {
    const text = readFileSync(`${root}scenarios/traces/${name}.csv`, 'utf8');
    expect(text.split('\n')[0]).toMatch(/invented/i);
    const { understood } = read(text);
    expect(understood.delimiter).toBe(delimiter);
    expect(Math.abs(understood.length_m / length_m - 1)).toBeLessThan(0.01);
    expect(Math.abs(understood.duration_s / duration_s - 1)).toBeLessThan(0.01);
  });
});
