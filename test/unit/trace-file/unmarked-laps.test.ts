import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { layoutCircuit } from '../../../engine/circuit/layout.ts';
import { speedProfile } from '../../../engine/circuit/speed-profile.ts';
import { readTrace } from '../../../engine/trace-file/read-trace.ts';
import {
  circuits,
  gaussian,
  heavyCar,
  heavyDriver,
  lightCar,
  lightDriver,
  logged,
  uniform,
  warmDay,
} from '../../support/driving.ts';
import { root } from '../../support/tree.ts';

const RATE_HZ = 10;
const cars = [
  ['heavy', heavyCar, heavyDriver],
  ['light', lightCar, lightDriver],
] as const;
const cases = (['sorrelby', 'long', 'slow'] as const).flatMap((id) =>
  cars.map(([name, car, driver]) => ({ id, name, car, driver })),
);
const lapOf = ({ id, car, driver }: (typeof cases)[number], seed: number): number[] => {
  const profile = speedProfile({ layout: layoutCircuit(circuits[id]), car, driver, air: warmDay });
  return [...logged(profile, { rate_Hz: RATE_HZ, noise_mps: 0.1, seed }).speed_mps];
};
const lengthOf = ({ id }: (typeof cases)[number]): number =>
  circuits[id].segments.reduce((sum, { length_m }) => sum + length_m, 0);
const spaced = (text: string): string => text.replaceAll('\u00A0', ' ');

/** Time and speed only, one row every tenth of a second. */
const file = (speeds: readonly number[]): string =>
  [
    'Time [s],Speed [km/h]',
    ...speeds.map((v, i) => `${(i / RATE_HZ).toFixed(1)},${(v * 3.6).toFixed(2)}`),
  ].join('\n');

/** As fast, give or take some percent of the way from lap to lap. */
function slower(speeds: readonly number[], pace: number): number[] {
  const n = Math.floor((speeds.length - 1) / pace);
  return Array.from({ length: n }, (_, i) => {
    const at = Math.floor(i * pace);
    const w = i * pace - at;
    return pace * (speeds[at]! + w * ((speeds[at + 1] ?? speeds[at]!) - speeds[at]!));
  });
}

describe('a single lap', () => {
  it.each(cases)('of $id in the $name car is no two laps', (driven) => {
    const { problems, understood } = readTrace(file(lapOf(driven, 1)));
    expect(problems).toEqual([]);
    expect(understood!.question).toBeNull();
    expect(understood!.laps).toHaveLength(1);
  });

  it.each(['sorrelby-heavy', 'tibbinlow-light'])('%s is no two laps', (name) => {
    const { understood } = readTrace(readFileSync(`${root}scenarios/traces/${name}.csv`, 'utf8'));
    expect(understood!.question).toBeNull();
  });
});

describe('four laps that nothing marks, after half a minute in the garage', () => {
  it.each(cases)('of $id in the $name car are seen, asked for and cut', (driven) => {
    const noise = gaussian(uniform(3));
    const standing = Array.from({ length: 300 }, () => Math.abs(0.1 * noise()));
    const laps = [0.9, 1, 0.99, 0.97].flatMap((pace, i) => slower(lapOf(driven, i + 1), pace));
    const text = file([...standing, ...laps]);
    const { understood, columns } = readTrace(text);
    const length_m = lengthOf(driven);
    expect(columns).toBeNull();
    expect(spaced(understood!.question!.text)).toMatch(
      /^This looks like 4 laps of about \d+( \d{3})? m\. Cut it so\?$/,
    );
    const [yes, no] = understood!.question!.answers.map(({ choices }) => readTrace(text, choices));
    const whole = yes!.understood!.laps.filter(({ problem }) => problem === '');
    expect(whole.length).toBeGreaterThanOrEqual(3);
    for (const lap of whole) expect(Math.abs(lap.length_m / length_m - 1)).toBeLessThan(0.02);
    expect(yes!.understood!.laps[yes!.understood!.lap!]!.duration_s).toBeCloseTo(
      lapOf(driven, 2).length / 10,
      -0.3,
    );
    expect(yes!.problems).toEqual([]);
    expect(no!.understood!.question).toBeNull();
    expect(no!.understood!.laps).toHaveLength(1);
  });
});

describe('laps beside a file’s own time', () => {
  const lap = lapOf(cases[0]!, 1);
  const along = lap.map((_, i) => lap.slice(0, i).reduce((sum, u) => sum + u / RATE_HZ, 0));

  it.each([
    ['Lap Time [s]', (i: number) => i / RATE_HZ],
    ['Lap Distance [m]', (i: number) => along[i]!],
  ])('are cut where %s returns to nothing', (name, value) => {
    const rows = [0, 1, 2].flatMap((n) =>
      lap.map((v, i) => {
        const t = (n * lap.length + i) / RATE_HZ;
        const total = along[i]! + n * (along.at(-1)! + lap[0]! / RATE_HZ);
        return [t, total, v * 3.6, value(i)].map((cell) => cell.toFixed(2)).join(',');
      }),
    );
    const { understood, problems } = readTrace(
      [`Time [s],Distance [m],Speed [km/h],${name}`, ...rows].join('\n'),
    );
    expect(problems).toEqual([]);
    expect(understood!.question).toBeNull();
    expect(understood!.laps.map(({ start_s }) => Math.round(start_s))).toEqual(
      [0, 1, 2].map((n) => Math.round((n * lap.length) / RATE_HZ)),
    );
  });

  it('by a distance that never returns is a problem, not one lap', () => {
    const rows = lap.map((v, i) => `${i / RATE_HZ},${along[i]!.toFixed(2)},${v * 3.6}`);
    const text = ['Time [s],Distance [m],Speed [km/h]', ...rows].join('\n');
    expect(readTrace(text).problems).toEqual([]);
    const { problems, columns } = readTrace(text, { lapsBy: 'distance' });
    expect(problems).toEqual([
      'laps: the distance never returns to the start and cuts none; cut them another way',
    ]);
    expect(columns).toBeNull();
    expect(readTrace(text, { lapsBy: 'column' }).problems).toEqual([
      'laps: no column tells them apart; cut them another way',
    ]);
  });
});
