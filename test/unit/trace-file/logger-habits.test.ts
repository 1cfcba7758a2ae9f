import { describe, expect, it } from 'vitest';
import { decodeText } from '../../../engine/shell/decode-text.ts';
import { layoutCircuit } from '../../../engine/circuit/layout.ts';
import { speedProfile } from '../../../engine/circuit/speed-profile.ts';
import { readTrace } from '../../../engine/trace-file/read-trace.ts';
import type { TraceChoices } from '../../../engine/index.ts';
import { circuits, heavyCar, heavyDriver, logged, warmDay } from '../../support/driving.ts';

const profile = speedProfile({
  layout: layoutCircuit(circuits.sorrelby),
  car: heavyCar,
  driver: heavyDriver,
  air: warmDay,
});
const lapAt = (rate_Hz: number) => {
  const { time_s, speed_mps } = logged(profile, { rate_Hz, noise_mps: 0, seed: 1 });
  return Array.from(time_s, (t, i) => ({ t, kmh: speed_mps[i]! * 3.6 }));
};
const lap = lapAt(10);
type Row = (typeof lap)[number];
const file = (head: string, row: (sample: Row, i: number) => string, rows = lap): string =>
  [head, ...rows.map(row)].join('\n');
const spaced = (text: string): string => text.replaceAll('\u00A0', ' ');
const read = (text: string, choices: TraceChoices = {}) => {
  const { problems, understood, columns } = readTrace(text, choices);
  return {
    problems: problems.map(spaced),
    mended: (understood?.mended ?? []).map(spaced),
    roles: understood?.columns.map(({ role, unit }) => `${role ?? 'none'} ${unit}`.trim()),
    question: understood?.question ?? null,
    understood,
    columns,
  };
};
/** Of this process alone, whatever else the machine is at [µs] */
function cpuOf(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return user + system;
}
const clock = (t: number, from_s = 0): string => {
  const all = (from_s + t) % 86_400;
  return [all / 3600, (all / 60) % 60, all % 60]
    .map((part) => `${Math.floor(part)}`.padStart(2, '0'))
    .join(':');
};
const plain = (rows = lap): string => file('Time [s],Speed [km/h]', ({ t, kmh }) => `${t},${kmh}`, rows);

describe('a slow log', () => {
  it.each([0.5, 1])('of %f samples a second is refused', (rate_Hz) => {
    const { problems, columns } = read(plain(lapAt(rate_Hz)));
    expect(problems.at(-1)).toBe(
      `a sample every ${(1 / rate_Hz).toFixed(1)} s cannot show how hard the car brakes; log at 5 Hz or more`,
    );
    expect(columns).toBeNull();
  });

  it('of 2 samples a second is taken, and what that costs is said; of 5 nothing is', () => {
    const { problems, mended } = read(plain(lapAt(2)));
    expect(problems).toEqual([]);
    expect(mended).toEqual([expect.stringMatching(/^Only a sample every 0\.50 s: .*too low; log at 5 Hz/)]);
    expect(read(plain(lapAt(5)))).toMatchObject({ problems: [], mended: [] });
  });

  it('whose values are repeated in a fast file is slow all the same', () => {
    const held = lap.map(({ t }, i) => ({ t, kmh: lap[i - (i % 10)]!.kmh }));
    expect(read(plain(held)).problems).toEqual([
      'a sample every 1.0 s cannot show how hard the car brakes; log at 5 Hz or more',
    ]);
  });

  it('against distance counts by the time that its steps take', () => {
    let d = 0;
    const slow = lapAt(1).map(({ kmh }) => `${(d += kmh / 3.6).toFixed(1)},${kmh.toFixed(2)}`);
    expect(read(['Distance [m],Speed [km/h]', ...slow].join('\n')).problems[0]).toMatch(
      /^a sample every (0\.9\d|1\.0) s cannot show/,
    );
  });
});

describe('a clock', () => {
  it('of whole seconds at ten rows a second is spread evenly, and said', () => {
    const { problems, mended, columns } = read(
      file('Time,Speed [km/h]', ({ t, kmh }) => `${clock(t, 50_000.35)},${kmh}`),
    );
    expect(problems).toEqual([]);
    expect(mended).toEqual([
      'Time stands for 10 rows at a time: they are spread evenly up to its next value',
    ]);
    expect(columns!.speed_mps).toHaveLength(lap.length);
    const worst = columns!.time_s!.reduce((most, t, i) => Math.max(most, Math.abs(t - i / 10)), 0);
    expect(worst).toBeLessThan(0.02);
  });

  it('of whole seconds whose rows only come twice is not spread', () => {
    const twice = lapAt(5).flatMap((row) => [row, row]);
    expect(read(plain(twice)).mended).toEqual([
      `${lapAt(5).length} rows with the time of the row before left out (first row 3)`,
    ]);
  });

  it('that passes midnight is said to', () => {
    const { mended, problems } = read(
      file('Time,Speed [km/h]', ({ t, kmh }) => `${clock(t, 86_350)}.${Math.round(t * 10) % 10},${kmh}`),
    );
    expect([problems, mended]).toEqual([[], ['Time passes midnight: read on']]);
  });

  it.each([
    ['millis', 1e3, 'time ms'],
    ['micros', 1e6, 'time µs'],
    ['us', 1e6, 'time µs'],
    ['ns', 1e9, 'time ns'],
    ['Time', 1e9, 'time ns'],
    ['Timestamp (ns)', 1e9, 'time ns'],
    ['Time [µs]', 1e6, 'time µs'],
  ])('called %s counts %f a second', (name, size, role) => {
    const { roles, columns, problems } = read(
      file(`${name},Speed [km/h]`, ({ t, kmh }) => `${Math.round(t * size)},${kmh}`),
    );
    expect(problems).toEqual([]);
    expect(roles).toEqual([role, 'speed km/h']);
    expect(columns!.time_s!.at(-1)).toBeCloseTo(lap.at(-1)!.t, 3);
  });

  it.each([
    ['is constant', lap.map(({ kmh }) => `7,${kmh}`), 'column Time: it is always 7; a time must rise'],
    ['has one row', ['0,100'], 'column Time: it has one row; a lap needs more'],
  ])('that is named and %s is told so', (_, rows, problem) => {
    expect(read(['Time [s],Speed [km/h]', ...rows].join('\n')).problems).toEqual([problem]);
  });
});

describe('a hole at an end of the only lap', () => {
  it.each([
    ['blank to its end', (i: number) => i > 500, /^nothing for 4\d\.\d s at its end$/],
    ['blank from its start', (i: number) => i < 500, /^nothing for 50\.0 s at its start$/],
  ])('%s is seen', (_, isBlank, problem) => {
    const { problems, columns, mended } = read(
      file('Time [s],Speed [km/h]', ({ t, kmh }, i) => `${t},${isBlank(i) ? '' : kmh}`),
    );
    expect(problems).toEqual([expect.stringMatching(problem)]);
    expect(columns).toBeNull();
    expect(mended[0]).toMatch(/^\d+ rows without a speed left out \(first row \d+\)$/);
  });

  it('that is a drop-out to nothing is seen', () => {
    const from = lap.findIndex(({ kmh }, i) => i > 300 && kmh > 150);
    const { problems } = read(
      file('Time [s],Speed [km/h]', ({ t, kmh }, i) => `${t},${i >= from ? 0 : kmh}`),
    );
    expect(problems).toEqual([expect.stringMatching(/^nothing for \d\d\.\d s at its end$/)]);
  });
});

describe('a unit', () => {
  it.each([
    ['Slope (‰)', '20', 'slope ‰', 0.02],
    ['Slope (mrad)', '20', 'slope mrad', Math.tan(0.02)],
    ['Slope (rad)', '0.02', 'slope rad', Math.tan(0.02)],
    ['Slope (°)', '1', 'slope °', Math.tan(Math.PI / 180)],
    ['Altitude (km)', '0.3', 'altitude km', 300],
    ['Altitude (ft)', '1000', 'altitude ft', 304.8],
    ['Altitude (mm)', '300000', 'altitude mm', 300],
  ])('%s is taken for what it is', (name, cell, role, si) => {
    const { roles, columns } = read(
      file(`Time [s],Speed [km/h],${name}`, ({ t, kmh }) => `${t},${kmh},${cell}`),
    );
    expect(roles![2]).toBe(role);
    expect((columns!.slope ?? columns!.height_m)![5]).toBeCloseTo(si, 9);
  });

  it.each([
    ['Slope (furlong)', "Slope is not used: its unit 'furlong' is none of %, °, m/m, ‰, rad or mrad"],
    [
      'Brake Pressure (V)',
      "Brake Pressure is not used: its unit 'V' is none of bar, kPa, MPa, psi, mbar or Pa",
    ],
    ['Brake Front (%)', "Brake Front is not used: its unit '%' is none of bar, kPa, MPa, psi, mbar or Pa"],
  ])('%s that is unknown leaves the column out, and is named', (name, sentence) => {
    const { mended, problems } = read(
      file(`Time [s],Speed [km/h],${name}`, ({ t, kmh }, i) => `${t},${kmh},${i % 50}`),
    );
    expect([problems, mended]).toEqual([[], [sentence]]);
  });

  it('is no letter at the end of a name, and does not stand in the way of what a person says', () => {
    const text = file('Kanal A,Kanal B,Kanal C', ({ t, kmh }) => `${t},${kmh},12`);
    expect(read(text).understood!.columns.map(({ name }) => name)).toEqual(['Kanal A', 'Kanal B', 'Kanal C']);
    const said = { roles: { 0: 'time', 1: 'speed' } } as const;
    const { problems, roles } = read(text, said);
    expect([problems, roles]).toEqual([[], ['time s', 'speed km/h', 'none']]);
    expect(read(text, { ...said, units: { 0: 's', 1: 'km/h' } }).problems).toEqual([]);
    const bracketed = file('Kanal [A],Kanal [C]', ({ t, kmh }) => `${t},${kmh}`);
    expect(read(bracketed, said).problems).toEqual([]);
  });

  it('of a receiver from the sea may be knots, and the first answer is shown', () => {
    const { question, roles } = read(file('Time [s],sog', ({ t, kmh }) => `${t},${kmh / 1.852}`));
    expect(question!.answers.map(({ choices }) => choices.units![1])).toContain('kn');
    expect(roles![1]).toBe(`speed ${question!.answers[0]!.choices.units![1]}`);
  });

  it('that a person corrected before and that no longer fits is one sentence', () => {
    const { problems } = read(plain(), { units: { 1: 'm/s' } });
    expect(problems).toEqual([
      expect.stringMatching(
        /^row 2, column Speed: expected 0 to 400 km\/h, got .* m\/s, .* km\/h, read in m\/s as you corrected it before; km\/h would fit, and so in \d+ more rows$/,
      ),
    ]);
    expect(read(plain(), { units: { 0: 'ms' } }).problems).toEqual([
      'column Time: rows would be 0.000100 s apart, read in ms as you corrected it before; s would fit',
    ]);
  });
});

describe('a column of speeds', () => {
  it('that is named in words wins over a letter', () => {
    const { roles } = read(file('Time [s],V,GPS Speed [km/h]', ({ t, kmh }) => `${t},${kmh / 2},${kmh}`));
    expect(roles).toEqual(['time s', 'none', 'speed km/h']);
  });

  it('that is a battery is none', () => {
    const volts = (head: string) =>
      read(file(head, ({ t }, i) => `${t},${(13.8 + 0.2 * Math.sin(i)).toFixed(2)}`)).problems[0];
    expect(volts('Time [s],V')).toMatch(/^header: no column is named as a speed/);
    expect(read(file('Time [s],v', ({ t, kmh }) => `${t},${kmh / 3.6}`)).roles![1]).toMatch(/^speed /);
  });

  it('that is always 0 gives way, and alone is told so', () => {
    const { roles, mended, problems } = read(
      file('Time [s],Speed [km/h],GPS Speed [km/h]', ({ t, kmh }) => `${t},0,${kmh}`),
    );
    expect([problems, roles]).toEqual([[], ['time s', 'none km/h', 'speed km/h']]);
    expect(mended).toEqual(['Speed is always 0: GPS Speed is the speed']);
    expect(read(file('Time [s],Speed [km/h]', ({ t }) => `${t},0`)).problems).toEqual([
      'column Speed: it is always 0',
    ]);
  });
});

describe('a table', () => {
  it('with rows that sum up at its end is read without them', () => {
    const { problems, mended } = read(`${plain()}\nMin,60\nMax value,258\nAvg:,190`);
    expect(problems).toEqual([]);
    expect(mended).toEqual([`3 rows of sums (lowest, highest, mean) left out (first row ${lap.length + 2})`]);
  });

  it('whose second column holds no numbers is told which', () => {
    const { problems } = read(
      file('Time [s],Speed [km/h]', ({ t, kmh }) => `${t.toFixed(1)},0x${Math.round(kmh).toString(16)}`),
    );
    expect(problems).toEqual([
      expect.stringMatching(/^file: its column 2 holds no numbers, e\.g\. '0x[0-9a-f]+' in line 2$/),
    ]);
  });

  it('of too many columns is refused, and a line of them passed over, with less work than it takes to cut them', () => {
    const tooMany = ['file: expected at most 400 columns; export fewer channels'];
    const wide: [text: string, problems: string[]][] = [
      [','.repeat(4_000_000), tooMany],
      [`Time [s];Speed [km/h]\n${`${';'.repeat(500)}1;2\n`.repeat(1000)}`, tooMany],
      [`${plain()}\n${','.repeat(4_000_000)}9`, []],
    ];
    const reading = cpuOf(() =>
      wide.forEach(([text, problems]) => expect(read(text).problems).toEqual(problems)),
    );
    expect(reading).toBeLessThan(cpuOf(() => wide.forEach(([text]) => text.split(/[,;\n]/))));
  });

  it('of UTF-8 with one spoilt letter keeps its others', () => {
    const bytes = new TextEncoder().encode('Zeit;Höhe;Größe;°C\n0,1;300,5;20;x\n');
    bytes[bytes.length - 2] = 0xff;
    const decoded = decodeText(bytes.buffer);
    expect(decoded).toMatchObject({ encoding: 'utf-8', text: 'Zeit;Höhe;Größe;°C\n0,1;300,5;20;\uFFFD\n' });
  });
});
