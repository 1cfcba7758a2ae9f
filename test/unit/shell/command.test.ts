import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { CornerRecord, StintRecord } from '../../../engine/report/summary.ts';
import { stint } from '../../support/terminal.ts';

const folder = mkdtempSync(join(tmpdir(), 'stint-'));
afterAll(() => rmSync(folder, { recursive: true }));

function recordOf(...settings: string[]): StintRecord {
  const { status, stdout, stderr } = stint(['--json', ...settings.flatMap((setting) => ['--set', setting])]);
  expect(stderr).toBe('');
  expect(status).toBe(0);
  return JSON.parse(stdout) as StintRecord;
}

const file = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

describe('--json', () => {
  const record = recordOf();

  it('prints one object with every key of the contract', () => {
    const keys = ['name', 'axles', 'lapTime_s', 'topSpeed_kmh', 'brakeEnergyPerLap_J', 'notices'];
    expect(Object.keys(record)).toEqual(expect.arrayContaining(keys));
    expect(record.corners).toBeUndefined();
  });

  it.each(['front', 'rear'] as const)('has all of the %s', (axle) => {
    const corner: CornerRecord = record.axles[axle];
    const peaks = ['facePeak_C', 'bulkPeak_C', 'vanePeak_C', 'padPeak_C', 'caliperPeak_C', 'fluidPeak_C'];
    const others = ['side', 'laps', 'fluidPeakAt_s', 'ledger_J', 'air', 'safeSpan_pct'];
    const standing = ['restarts', 'soak', 'stopSoaks'];
    const feel = ['damage', 'pedal', 'fluidMargin_K', 'fluidClassMargin_K', 'fluidCall'];
    expect(Object.keys(corner)).toEqual(expect.arrayContaining([...peaks, ...others, ...standing, ...feel]));
    const ofDamage = ['largestDifference_K', 'place', 'lap', 'stopsAbove200', 'stops'];
    const seconds = ['aboveFacePeak_s', 'belowBite_s', 'aboveBulk_s'];
    expect(Object.keys(corner.damage)).toEqual(expect.arrayContaining([...ofDamage, ...seconds]));
    const ofPedal = ['middle_C', 'highest', 'place', 'lap', 'lowest', 'lowestPlace', 'lowestLap'];
    expect(Object.keys(corner.pedal!)).toEqual(expect.arrayContaining(ofPedal));
    const ofRestart = [
      'lap',
      'after',
      'firstStop_C',
      'firstStopPlace',
      'underBite_K',
      'brakesToWarm',
      'lapsToWarm',
    ];
    expect(Object.keys(corner.restarts[0]!)).toEqual(expect.arrayContaining(ofRestart));
    const rise = ['start_C', 'peak_C', 'rise_K', 'peakAfter_s'];
    expect(Object.keys(corner.soak!.fluid)).toEqual(expect.arrayContaining(rise));
    const ofLap = ['lap', 'kind', 'faceMin_C', 'faceMean_C', 'faceMax_C', 'bulkMax_C', 'coldestStop_C'];
    const judged = ['hardStops', 'belowBite', 'aboveFacePeak_s', 'in', 'largestDifference_K'];
    expect(Object.keys(corner.laps[0]!)).toEqual(expect.arrayContaining([...ofLap, ...judged]));
    const losses = ['vaneAir', 'faceAir', 'otherAir', 'radiation', 'conducted'];
    for (const ledger of [corner.ledger_J, corner.standLedger_J, corner.laps[0]!.ledger_J])
      expect(Object.keys(ledger).sort()).toEqual(['brakeHeat', 'stored', 'residual', ...losses].sort());
    const flows = ['speed_kmh', 'ductFlow_gps', 'vaneFlow_gps', 'leakFlow_gps', 'plenum_Pa'];
    expect(Object.keys(corner.air[0]!)).toEqual(expect.arrayContaining(flows));
    expect(corner.air.map(({ speed_kmh }) => speed_kmh)).toEqual(
      Array.from({ length: 16 }, (_, i) => 20 * i),
    );
    expect(corner.side).toBe('both');
  });

  it('gives the corners apart, and the hotter one for the axle, where sides differ', () => {
    const uneven = recordOf('blanking_pct.front_left=95');
    expect(Object.keys(uneven.corners!).sort()).toEqual(['front_left', 'front_right']);
    expect(uneven.axles.front.side).toBe('left');
    expect(uneven.axles.front.facePeak_C).toBe(uneven.corners!['front_left']!.facePeak_C);
  });

  const numbersOf = (r: StintRecord): string => JSON.stringify([r.axles, r.lapTime_s, r.brakeEnergyPerLap_J]);

  // by one process: a batch prints for a job what --json prints (batch.test.ts)
  const answers = (settings: readonly string[]): Map<string, StintRecord> => {
    const jobs = settings.map((setting) => {
      const [key, value] = setting.split('=') as [string, string];
      const read: unknown = value === 'none' ? null : JSON.parse(value);
      return JSON.stringify({ set: { [key]: read } });
    });
    const { stdout, status } = stint(['--batch', file('jobs.jsonl', `${jobs.join('\n')}\n`)]);
    expect(status).toBe(0);
    const lines = stdout.trimEnd().split('\n');
    return new Map(settings.map((setting, i) => [setting, JSON.parse(lines[i]!) as StintRecord]));
  };
  const moving = [
    'conditions.ambient_C=5',
    'conditions.altitude_m=1500',
    'conditions.wet=true',
    'blanking_pct.front=0',
    'blanking_pct.rear=100',
    'blanking_pct.rear_right=0',
    'sides.front_left.duct.recovery=0.6',
    'traffic.gap_m=8',
    'traffic.gap_s=0.5',
    'stint.laps=8',
  ];
  const still = ['traffic.gap_m=none', 'traffic.gap_s=none', 'stint.hold_trace=true', 'conditions.wet=false'];
  const answered = answers([...moving, ...still]);

  it.each(moving)('%s changes the result', (setting) => {
    expect(numbersOf(answered.get(setting)!)).not.toBe(numbersOf(record));
  });

  it.each(still)('%s changes nothing here', (setting) => {
    expect(numbersOf(answered.get(setting)!)).toBe(numbersOf(record));
  });

  it('stint.laps counts all driven laps', () => {
    expect(recordOf('stint.laps=9').axles.front.laps.map(({ lap }) => lap)).toEqual([
      1, 2, 3, 4, 5, 6, 7, 8, 9,
    ]);
  });

  it('stint.hold_trace keeps speed and heat while the air changes', () => {
    const heldRecord = recordOf('stint.hold_trace=true', 'conditions.ambient_C=40');
    const again = recordOf('conditions.ambient_C=40');
    expect(heldRecord.lapTime_s).toBe(record.lapTime_s);
    expect(heldRecord.brakeEnergyPerLap_J).toBe(record.brakeEnergyPerLap_J);
    expect(heldRecord.axles.front.facePeak_C).toBeGreaterThan(record.axles.front.facePeak_C);
    expect(again.lapTime_s).not.toBe(record.lapTime_s);
  });

  it('reads a scenario file', () => {
    const path = file('mine.json', JSON.stringify({ name: 'Mine', stint: { laps: 6 } }));
    const { stdout, status } = stint([path, '--json']);
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({ name: 'Mine', axles: { front: { laps: { length: 6 } } } });
  });

  it('reads a trace', () => {
    const { stdout, status } = stint(['--trace', 'scenarios/traces/sorrelby-heavy.csv', '--json']);
    expect(status).toBe(0);
    expect(Math.abs((JSON.parse(stdout) as StintRecord).lapTime_s - record.lapTime_s)).toBeLessThan(3);
  });

  it('says of a trace which lap it is, which unit was guessed, and what was set right', () => {
    const rows = Array.from({ length: 220 }, (_, i) => [i / 2, 160 + 60 * Math.sin(i / 9), i < 110 ? 1 : 2]);
    const text = ['Time,Speed [km/h],Lap', ...rows.map((row) => row.join(',')), 'Max,220,2'].join('\n');
    const { stdout, stderr, status } = stint(['--trace', file('slow.csv', text), '--json']);
    expect([stderr, status]).toEqual(['', 0]);
    const said = (JSON.parse(stdout) as StintRecord).notices
      .filter(({ kind }) => kind === 'trace')
      .map((notice) => notice.text.replaceAll('\u00A0', ' '));
    expect(said).toEqual([
      expect.stringMatching(/^trace: lap 1, one of 2 in the file$/),
      'trace: Time: no unit given: read as s',
      'trace: 1 row of sums (lowest, highest, mean) left out (row 222)',
      expect.stringMatching(/^trace: Only a sample every 0\.50 s: it blurs/),
    ]);
    expect(stint(['--trace', file('slow.csv', text)]).stdout).toMatch(/\nnote: trace: Time: no unit given/);
  });
});

describe('other outputs', () => {
  it('is a table with one line a lap without --json', () => {
    const { stdout, status } = stint([]);
    expect(status).toBe(0);
    expect(stdout.split('\n').filter((line) => / (out|push|in) /.test(line)).length).toBeGreaterThanOrEqual(
      20,
    );
  });

  it('is a table that tells of damage, pedal and fluid, an axle a line', () => {
    const lines = stint([]).stdout.split('\n');
    for (const axle of ['front', 'rear']) {
      for (const words of [
        'face at most \\d+ K above its core \\(turn \\d+, lap \\d+\\), above 200 K in \\d+ of \\d+ brakings; counted laps: \\d+\\.\\d s above face peak, \\d+\\.\\d s above bulk, \\d+\\.\\d s of braking below bite',
        'pedal (\\d+ % heavier|\\d+ % lighter|no heavier) at turn \\d+ on lap \\d+ than in the middle of the window \\(\\d+ °C\\), (\\d+ % heavier|\\d+ % lighter|no heavier) at turn \\d+ on lap \\d+',
        'pad .*, fluid \\d+ °C at [\\d.]+ min, \\d+ K below wet boiling( \\(comfortable\\))?',
      ])
        expect(lines).toContainEqual(expect.stringMatching(new RegExp(`^${axle}: ${words}$`)));
    }
  });

  it('--csv writes a file with a row a sample', () => {
    const path = join(folder, 'out.csv');
    const { stdout, status } = stint(['--csv', path, '--set', 'stint.laps=4']);
    expect([status, stdout]).toEqual([0, '']);
    const [head = '', ...rows] = readFileSync(path, 'utf8').trim().split('\n');
    expect(head).toMatch(/^lap,time_s,distance_m,speed_kmh,brake_power_W,front_face_C,/);
    expect(rows.length).toBeGreaterThan(400);
    expect(rows.every((row) => row.split(',').length === head.split(',').length)).toBe(true);
  });
});

describe('what is refused ends with 2, one line a problem on stderr, and nothing on stdout', () => {
  it.each([
    [
      'an unknown key',
      ['--set', 'conditions.ambiant_C=20'],
      [/^conditions\.ambiant_C: expected .*, got 20$/],
    ],
    [
      'a bad value',
      ['--set', 'blanking_pct.front=140'],
      [/^blanking_pct\.front: expected 0 to 100, got 140$/],
    ],
    [
      'kelvin',
      ['--set', 'conditions.ambient_C=295'],
      [/^conditions\.ambient_C: expected -30 to 55, got 295 \(kelvin\?\)$/],
    ],
    [
      'several at once',
      ['--set', 'stint.laps=0', '--set', 'no.key=1', '--set', 'conditions.wet=maybe'],
      [/^no\.key: /, /^stint\.laps: /, /^conditions\.wet: expected true or false, got 'maybe'$/],
    ],
    ['no value', ['--set', 'stint.laps'], [/^--set: expected key=value, got 'stint\.laps'$/]],
    [
      'a scenario that is not there',
      ['missing.json'],
      [/^scenario: expected a scenario file that can be read, got 'missing\.json' \(ENOENT: /],
    ],
    [
      'a trace that is not there',
      ['--trace', 'missing.csv'],
      [/^trace: expected a trace file that can be read, got 'missing\.csv' \(ENOENT: /],
    ],
    [
      'a trace with an open question',
      ['--trace', 'test/fixtures/traces/speed-without-unit.csv'],
      [
        /^trace: expected a trace that can be driven, got '.*speed-without-unit\.csv' \(Is the speed in km\/h or mph\? .*\(km\/h or mph, .*the file must say it\)$/,
      ],
    ],
    [
      'a trace with a hole',
      ['--trace', 'test/fixtures/traces/gap.csv'],
      [/^trace: expected .*, got '.*gap\.csv' \(nothing for 3\.3\ss from 4\.9\ss\)$/],
    ],
    [
      'a file that is not JSON',
      [file('broken.json', '{')],
      [/^scenario: expected a file of JSON, got '.*broken\.json' \(.*JSON.*\)$/],
    ],
    ['a file with a bad value', [file('bad.json', '{"stint":{"laps":0}}')], [/^stint\.laps: expected /]],
    [
      'a doubt that does not fit the rest',
      [
        file(
          'doubt.json',
          '{"doubt":{"brakes.front.disc.cheek_mm":{"low":9.1,"high":10,"reason":"not measured"}}}',
        ),
        '--spread',
        '5',
      ],
      [
        /^doubt\.brakes\.front\.disc\.cheek_mm\.high: expected a value with which .*thickness_mm is .*, got 10$/,
      ],
    ],
    [
      'a place that cannot be written',
      ['--csv', join(folder, 'no/such/out.csv')],
      [/^csv: expected a file that can be written, got '.*out\.csv' \(ENOENT: /],
    ],
  ] as [string, string[], RegExp[]][])('%s', (_, args, expected) => {
    const { status, stdout, stderr } = stint(args);
    const lines = stderr.trimEnd().split('\n');
    expect(status).toBe(2);
    expect(stdout).toBe('');
    for (const line of expected) expect(lines).toContainEqual(expect.stringMatching(line));
    expect(lines).toHaveLength(expected.length);
  });

  it('an unknown option, with the usage', () => {
    const { status, stdout, stderr } = stint(['--jsno']);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(/^command line: .*\nusage: /);
  });
});
