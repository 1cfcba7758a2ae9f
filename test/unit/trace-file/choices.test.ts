import { describe, expect, it } from 'vitest';
import { readTrace } from '../../../engine/trace-file/read-trace.ts';
import { fnv1a } from '../../../engine/trace-file/fingerprint.ts';

const spaced = (texts: readonly string[]): string[] => texts.map((text) => text.replaceAll('\u00A0', ' '));
/** Three laps of 100 s at 50 m/s, ten rows a second, the second a little faster: they differ in the distance they come back at. */
const rows = Array.from({ length: 3000 }, (_, i) => ({
  t: i / 10,
  kmh: 180 + 60 * Math.sin(i / 30) + (i >= 1000 && i < 2000 ? 1 : 0),
}));
const file = (head: string, row: (sample: (typeof rows)[number], i: number) => string): string =>
  [head, ...rows.map(row)].join('\n');
const timed = file('Time [s],Speed [km/h],RPM', ({ t, kmh }) => `${t},${kmh},9000`);

describe('what a person says', () => {
  it('of a unit stands, even where it is not likely', () => {
    const { understood } = readTrace(timed, { units: { 1: 'm/s' } });
    expect(understood!.columns[1]).toMatchObject({ unit: 'm/s', unitReason: '' });
    expect(understood!.laps[0]!.problem).toMatch(
      /^row 2, column Speed: expected 0 to 400 km\/h, got 180 m\/s/,
    );
  });

  it('of roles stands, and a column with none is not used', () => {
    const { understood, columns } = readTrace(timed, { roles: { 1: null, 2: 'speed' }, units: { 2: 'm/s' } });
    expect(understood!.columns.map(({ role }) => role)).toEqual(['time', null, 'speed']);
    expect(columns).toBeNull();
  });

  it('of the delimiter that makes no table is answered, and the file is shown as it is guessed', () => {
    const { problems, understood, columns } = readTrace(timed, { delimiter: ';' });
    expect(problems).toEqual([
      'file: the chosen delimiter and decimal mark make no rows of numbers; choose others',
    ]);
    expect(understood!.delimiter).toBe(',');
    expect(columns).toBeNull();
  });

  it('of the starts of laps cuts them there, and each closes where the next begins', () => {
    const { understood, columns } = readTrace(timed, { lapsBy: 'times', lapStarts_s: [0, 100, 200], lap: 1 });
    expect(understood!.lapsBy).toBe('times');
    expect(understood!.laps.map(({ start_s }) => start_s)).toEqual([0, 100, 200]);
    expect(understood!.laps[1]).toMatchObject({ lap: 2, duration_s: 100, problem: '' });
    expect(columns!.time_s!.at(-1)).toBeCloseTo(100, 6);
  });

  it('that there are no laps leaves one', () => {
    const lapped = file(
      'Time [s],Speed [km/h],Lap',
      ({ t, kmh }, i) => `${t},${kmh},${Math.floor(i / 1000)}`,
    );
    expect(readTrace(lapped).understood!.laps).toHaveLength(3);
    expect(readTrace(lapped, { lapsBy: 'none' }).understood!.laps).toHaveLength(1);
  });
});

describe('laps', () => {
  it('with a hole cannot be driven and another is taken', () => {
    const lapped = file(
      'Time [s],Speed [km/h],Lap',
      ({ t, kmh }, i) => `${t},${kmh},${Math.floor(i / 1000)}`,
    );
    const lines = lapped.split('\n');
    const { understood, problems } = readTrace([...lines.slice(0, 1411), ...lines.slice(1443)].join('\n'));
    expect(problems).toEqual([]);
    expect(spaced(understood!.laps.map(({ problem }) => problem))).toEqual([
      '',
      'nothing for 3.3 s from 140.9 s; choose another lap',
      '',
    ]);
    expect(understood!.lap).not.toBe(1);
  });

  it('are cut by a marker that is set for a moment', () => {
    const marked = file(
      'Time [s],Speed [km/h],Beacon',
      ({ t, kmh }, i) => `${t},${kmh},${i % 1000 < 3 ? 1 : 0}`,
    );
    expect(readTrace(marked).understood!.laps.map(({ start_s }) => Math.round(start_s))).toEqual([
      0, 100, 200,
    ]);
  });

  it('whose time starts again each lap are put end to end', () => {
    const again = file(
      'Lap,Lap time [s],Speed [km/h]',
      ({ kmh }, i) => `${Math.floor(i / 1000)},${(i % 1000) / 10},${kmh}`,
    );
    const { understood } = readTrace(again);
    expect(understood!.laps.map(({ start_s }) => Math.round(start_s))).toEqual([0, 100, 200]);
    expect(understood!.mended).toEqual([]);
  });

  it('that nothing tells apart are asked for where the log is too long for one', () => {
    const long = Array.from({ length: 8000 }, (_, i) => `${i / 10},${180 + 60 * Math.sin(i / 30)}`);
    const { problems, understood } = readTrace(['Time [s],Speed [km/h]', ...long].join('\n'));
    expect(understood!.lapsBy).toBe('none');
    expect(spaced(problems)).toEqual([
      'it is 40.1 km long and nothing tells its laps apart; say at what times they start',
    ]);
  });
});

describe('a fingerprint', () => {
  const of = (text: string): string => readTrace(text).understood!.fingerprint;

  it('is the same for files with the same header, whatever is in them', () => {
    const other = file('TIME [s], speed [KM/H] ,rpm', ({ t, kmh }) => `${t},${kmh / 2},1`);
    expect(of(other)).toBe(of(timed));
  });

  it('is another for another unit, name or count of columns', () => {
    const heads = ['Time [s],Speed [mph],RPM', 'Time [s],GPS Speed [km/h],RPM', 'Time [s],Speed [km/h],RPM'];
    const marks = heads.map((head) => of(file(head, ({ t, kmh }) => `${t},${kmh},9000`)));
    const wider = of(file('Time [s],Speed [km/h],RPM,Gear', ({ t, kmh }) => `${t},${kmh},9000,4`));
    expect(new Set([...marks, wider]).size).toBe(4);
  });

  it('is the hash that its authors define', () => {
    expect(fnv1a('')).toBe('cbf29ce484222325');
    expect(fnv1a('a')).toBe('089be207b544f1e4'); // the bytes 0x61 and 0
  });
});

describe('a large file', () => {
  const large = Array.from({ length: 200_000 }, (_, i) => {
    const along = (i / 100) * 50;
    return `${(i / 100).toFixed(2)},${(180 + 60 * Math.sin(i / 300)).toFixed(2)},${(along % 5000).toFixed(2)},${(along % 7).toFixed(1)}`;
  });
  const text = ['Time [s],Speed [km/h],Distance [m],Other', ...large].join('\n');

  it('is read whole, with progress that rises to one', () => {
    const shares: number[] = [];
    const { understood, columns, problems } = readTrace(text, {}, (share) => shares.push(share));
    expect(problems).toEqual([]);
    expect(understood!.rows).toBe(200_000);
    expect(understood!.laps).toHaveLength(20);
    expect(columns!.speed_mps.length).toBe(10_001);
    expect(shares.length).toBeGreaterThanOrEqual(10);
    expect(shares.every((share, i) => i === 0 || share >= shares[i - 1]!)).toBe(true);
    expect(shares.at(-1)).toBe(1);
  });

  it('hands out pictures of at most 96 values and columns that stand alone', () => {
    const { understood, columns } = readTrace(text);
    expect(understood!.columns.map(({ thumbnail }) => thumbnail.length)).toEqual([96, 96, 96, 96]);
    const buffers = [...Object.values(columns!), ...understood!.columns.map(({ thumbnail }) => thumbnail)];
    expect(buffers.every((column: Float64Array) => column.byteLength === column.buffer.byteLength)).toBe(
      true,
    );
    expect(new Set(buffers.map((column: Float64Array) => column.buffer)).size).toBe(buffers.length);
  });
});
