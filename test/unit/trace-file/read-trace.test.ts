import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { TraceChoices, TraceColumns, UnderstoodTrace } from '../../../engine/index.ts';
import { readTrace } from '../../../engine/trace-file/read-trace.ts';
import { mpsFromKmh } from '../../../engine/units.ts';
import { root } from '../../support/tree.ts';

/** A lap of 100 s at 50 m/s, give or take, in km/h. */
const lap = (rows = 201): { t: number; d: number; kmh: number }[] =>
  Array.from({ length: rows }, (_, i) => ({ t: i / 2, d: i * 25, kmh: 180 + 20 * Math.sin(i / 10) }));
const csv = (head: string[], row: (sample: ReturnType<typeof lap>[number], i: number) => string): string =>
  [...head, ...lap().map(row)].join('\n') + '\n';
const plain = csv(['time_s,speed_kmh'], ({ t, kmh }) => `${t.toFixed(1)},${kmh.toFixed(2)}`);

function read(
  text: string,
  choices: TraceChoices = {},
): { columns: TraceColumns; understood: UnderstoodTrace } {
  const { columns, understood, problems } = readTrace(text, choices);
  if (!columns || !understood) throw new Error([...problems, understood?.question?.text].join('\n'));
  return { columns, understood };
}
const spaced = (text: string): string => text.replaceAll('\u00A0', ' ');
const problems = (text: string, choices: TraceChoices = {}): string[] =>
  readTrace(text, choices).problems.map(spaced);
/** Names, roles and units without the pictures. */
const plainly = ({ columns }: UnderstoodTrace) =>
  columns.map(({ name, role, unit }) => ({ name, role, unit }));

describe('a well-formed file', () => {
  it('with comma and unit suffixes becomes SI columns', () => {
    const { columns, understood } = read(plain);
    expect(columns.speed_mps[0]).toBeCloseTo(50, 9);
    expect(columns.time_s!.at(-1)).toBe(100);
    expect(understood).toMatchObject({ delimiter: ',', decimal: '.', rows: 201, lapsBy: 'none', lap: 0 });
    expect(understood.laps).toMatchObject([{ lap: 1, start_s: 0, duration_s: 100, problem: '' }]);
    expect(understood.meanInterval_s).toBeCloseTo(0.5, 9);
    expect(understood.firstRows).toHaveLength(12);
    expect(understood.firstRows[1]).toEqual(['0.5', '182']);
  });

  it('with semicolon and decimal comma is not taken for commas', () => {
    const text = plain.replaceAll(',', ';').replaceAll('.', ',');
    const { columns, understood } = read(text);
    expect(understood).toMatchObject({ delimiter: ';', decimal: ',' });
    expect(understood.firstRows[1]).toEqual(['0.5', '182']);
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
    expect(plainly(understood)).toEqual([
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
    expect(plainly(understood)[1]).toEqual({ name: 'Gear', unit: '', role: null });
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
    expect(understood.laps.map(({ lap: number }) => number)).toEqual([0, 1, 2, 3]);
    expect(understood.laps[understood.lap!]!.lap).toBe(2);
    expect(columns.speed_mps.length).toBe(202); // closed by the first row of the next
  });
});

describe('a bad file', () => {
  it('names row and column of a cell that is not a number', () => {
    expect(problems(plain.replace('7.5,', '7.5,abc'))).toEqual([
      "row 17, column speed: expected a number, got 'abc199.95'",
    ]);
  });

  it('leaves out a row whose time stands still, and says so', () => {
    const { columns, understood } = read(plain.replace('\n8.0,', '\n7.5,'));
    expect(columns.time_s!.length).toBe(200);
    expect(understood.mended.map(spaced)).toEqual([
      '1 row with the time of the row before left out (row 18)',
      'Only a sample every 0.50 s: it blurs how hard the car brakes, and brake heat may come out several percent too low; log at 5 Hz or more',
    ]);
  });

  it('names a speed that no car has', () => {
    const text = plain.replace(/\n8\.0,.*/, '\n8.0,512');
    expect(problems(text)).toEqual(['row 18, column speed: expected 0 to 400 km/h, got 512 km/h']);
  });

  it('says what happens again and again once, by its first row and how often', () => {
    const text = plain.replaceAll(/\n(\d\d+)\.5,.*/g, '\n$1.5,x');
    expect(problems(text)).toEqual([
      "row 23, column speed: expected a number, got 'x', and so in 89 more rows",
    ]);
    expect(problems(plain.replaceAll(/,(\d)/g, ',-$1'))).toEqual([
      'row 2, column speed: expected 0 to 400 km/h, got -180 km/h, and so in 200 more rows',
    ]);
  });

  it('with a unit that no speed has is told which there are', () => {
    expect(problems(plain.replace('speed_kmh', 'Speed [rpm]'))).toEqual([
      "column Speed: expected a unit of km/h, mph, m/s, kn, ft/s, got 'rpm'",
    ]);
  });

  it('wants a speed, and a time or a distance', () => {
    expect(problems(plain.replace('speed_kmh', 'rpm'))[0]).toMatch(/^header: no column is named as a speed/);
    expect(problems(plain.replace('time_s', 'index'))[0]).toMatch(/named as a time or a distance/);
  });

  it('wants 50 rows and a lap of plausible length', () => {
    const few = plain.split('\n').slice(0, 31).join('\n');
    expect(problems(few)).toEqual(['expected at least 50 rows in a lap, got 30']);
    const short = csv(['time_s,speed_kmh'], ({ t }) => `${t},9`);
    expect(problems(short)[0]).toBe('expected a lap of at least 500 m, got 250 m');
  });

  it('notices speed and distance that no unit can make agree', () => {
    const text = csv(['time_s,distance_m,speed_kmh'], ({ t, d, kmh }) => `${t},${d * 1.25},${kmh}`);
    expect(problems(text)).toEqual([
      'speed over time makes 5 016 m where the distance says 6 250 m; check their units, or leave the distance out',
    ]);
    expect(read(text, { roles: { 1: null } }).columns.distance_m).toBeUndefined();
  });

  it('does not bridge a gap in which a stop could hide', () => {
    const lines = plain.split('\n');
    const {
      problems: found,
      understood,
      columns,
    } = readTrace([...lines.slice(0, 50), ...lines.slice(60)].join('\n'));
    expect(found.map(spaced)).toEqual(['nothing for 5.5 s from 24.0 s']);
    expect(columns).toBeNull();
    const bare = understood!.columns[1]!.thumbnail.map((value) => (Number.isNaN(value) ? 1 : 0));
    expect(bare.slice(23, 28).every((value) => value === 1)).toBe(true);
    expect(bare.reduce((sum, value) => sum + value, 0)).toBeLessThan(9);
  });

  it('of other kinds is refused in a sentence', () => {
    expect(problems('{"a": 1}')).toEqual([
      'file: it is no table of rows; export it from the logger as text (CSV) first',
    ]);
    for (const text of ['hello', '1\n2\n3\n4\n5\n6']) {
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
    const [whole] = understood.laps;
    expect(understood.delimiter).toBe(delimiter);
    expect(Math.abs(whole!.length_m / length_m - 1)).toBeLessThan(0.01);
    expect(Math.abs(whole!.duration_s / duration_s - 1)).toBeLessThan(0.01);
  });
});
