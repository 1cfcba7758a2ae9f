import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { tracePart } from '../../../engine/scenario/trace-part.ts';
import { checkScenario } from '../../../engine/scenario/parse.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { readTrace } from '../../../engine/trace-file/read-trace.ts';
import { root } from '../../support/tree.ts';

/** 12 s at 10 Hz: speeds of a sine, and what its change makes of an acceleration in g. */
const samples = Array.from({ length: 120 }, (_, i) => ({
  t: i / 10,
  kmh: 200 + 40 * Math.sin(i / 10),
  g: ((40 * Math.cos(i / 10)) / 3.6 / 9.80665) * 1,
  bar: Math.max(0, -60 * Math.cos(i / 10)),
}));
type Sample = (typeof samples)[number];
const file = (name: string, cell: (sample: Sample, i: number) => string): string =>
  [`Time [s],Speed [km/h],${name}`, ...samples.map((s, i) => `${s.t},${s.kmh},${cell(s, i)}`)].join('\n');
const read = (text: string) => {
  const { columns, understood, problems } = readTrace(text);
  if (!columns || !understood) throw new Error(problems.join('\n'));
  return {
    columns,
    extra: understood.columns[2]!,
    mended: understood.mended.map((m) => m.replaceAll('\u00A0', ' ')),
  };
};

describe('a logged acceleration', () => {
  it('in m/s² that calls itself g is seen by the speed', () => {
    const { columns, extra } = read(file('G Long [g]', ({ g }) => `${g * 9.80665}`));
    expect(extra).toMatchObject({ unit: 'm/s²', role: 'acceleration' });
    expect(extra.unitReason).toBe('stated g, but the speed changes as if it were m/s²: read as m/s²');
    expect(columns.accel_mps2![0]).toBeCloseTo(40 / 3.6, 6);
  });

  it('that does not follow the speed is not used, and said so', () => {
    const { columns, mended } = read(file('Long acc [g]', (_, i) => `${Math.sin(i * i)}`));
    expect(columns.accel_mps2).toBeUndefined();
    expect(mended).toEqual(['Long acc is not used: it does not follow the speed']);
  });

  it('logged every half second is filled between, and with a hole of 2 s it is left out', () => {
    const half = read(file('Long acc [g]', ({ g }, i) => (i % 5 === 0 ? `${g}` : '')));
    expect(half.columns.accel_mps2!.every((a) => Number.isFinite(a))).toBe(true);
    expect(half.mended).toEqual(['Long acc: 96 blank cells filled between the rows around']);
    const hole = read(file('Long acc [g]', ({ g }, i) => (i > 50 && i < 70 ? '' : `${g}`)));
    expect(hole.columns.accel_mps2).toBeUndefined();
    expect(hole.mended).toEqual(['Long acc is not used: for over a second of this lap it has nothing']);
  });
});

describe('a logged brake pressure', () => {
  it.each([
    ['Brake Pressure [bar]', 1],
    ['Bremsdruck vorne [kPa]', 100],
    ['p_brake_f (MPa)', 0.1],
    ['Front Brake Press [psi]', 14.503774],
  ])('%s becomes pascal at the front', (name, size) => {
    const { columns } = read(file(name, ({ bar }) => `${bar * size}`));
    expect(Math.max(...columns.brakeFront_Pa!) / 1e5).toBeCloseTo(60, 0);
    expect(columns.brakeRear_Pa).toBeUndefined();
  });

  it('in psi that calls itself bar is seen by its peak', () => {
    const { extra } = read(file('Brake Pressure Rear [bar]', ({ bar }) => `${bar * 14.5}`));
    expect(extra).toMatchObject({ role: 'rear brake pressure', unit: 'psi' });
    expect(extra.unitReason).toMatch(/^stated bar, but its peak is 8\d\d(\.\d+)?: read as psi$/);
  });

  it('without a unit where two fit is not used until somebody says', () => {
    const text = file('Brake Pressure', ({ bar }) => `${bar / 3}`);
    const { columns, mended } = read(text);
    expect(columns.brakeFront_Pa).toBeUndefined();
    expect(mended[0]).toMatch(
      /^Brake Pressure is not used: its peak of 19\.99\d* may be in bar or MPa; say which$/,
    );
    expect(readTrace(text, { units: { 2: 'bar' } }).columns!.brakeFront_Pa).toBeDefined();
  });
});

describe('a column that a stint can do without', () => {
  it.each([
    ['Slope [%]', '80', 'Slope is not used: 80.0 % is steeper than any road'],
    ['Altitude [m]', '32767', 'Altitude is not used: 32 767 m to 32 767 m is no height of a road'],
    ['Brake Pressure [bar]', '0', 'Brake Pressure is not used: a peak of 0 bar is no brake pressure'],
  ])('%s with %s is not used', (name, cell, sentence) => {
    expect(read(file(name, () => cell)).mended).toEqual([sentence]);
  });

  it('becomes a part of the scenario in the trade’s units', () => {
    const path = `${root}test/fixtures/traces/acceleration-backwards.csv`;
    const { columns } = readTrace(readFileSync(path, 'utf8'));
    const trace = tracePart('log', columns!);
    expect(Math.max(...trace.brake_front_bar!) / Math.max(...trace.brake_rear_bar!)).toBeCloseTo(1 / 0.6, 2);
    expect(Math.max(...trace.accel_g!)).toBeCloseTo(1.133, 3);
    expect(trace.slope_pct![5]).toBeCloseTo(1.5, 9);
    expect(trace.height_m![0]).toBe(100);
    expect(checkScenario({ ...defaultScenario(), trace }).ok).toBe(true);
  });
});
