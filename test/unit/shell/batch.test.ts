import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { Problem } from '../../../engine/scenario/problem.ts';
import { stint } from '../../support/terminal.ts';

const folder = mkdtempSync(join(tmpdir(), 'batch-'));
afterAll(() => rmSync(folder, { recursive: true }));

const file = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

interface Result {
  id?: unknown;
  problems?: Problem[];
}

const resultsIn = (stdout: string): Result[] =>
  stdout
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line) as Result);

const short = { 'stint.laps': 3 };
const shortly = ['--set', 'stint.laps=3'];
const scenario = { name: 'Früh am Morgen', stint: { laps: 3 }, brakes: { rear: { duct: null } } };
const scenarioFile = file('früh.json', JSON.stringify(scenario));
const trace = 'scenarios/traces/sorrelby-heavy.csv';

describe('a job is answered with exactly what --json prints', () => {
  const asked: [string, string[], object][] = [
    ['of nothing', [], {}],
    [
      'of settings',
      [...shortly, '--set', 'traffic.gap_m=none', '--set', 'conditions.wet=true', '--no-span'],
      { set: { ...short, 'traffic.gap_m': null, 'conditions.wet': true }, span: false },
    ],
    [
      'of a scenario file, with an axle that has no duct to blank',
      [scenarioFile],
      { scenario: scenarioFile },
    ],
    ['of a scenario in the line', [scenarioFile], { scenario }],
    ['of a trace', ['--trace', trace, ...shortly, '--no-span'], { trace, set: short, span: false }],
    [
      'of a spread',
      [...shortly, '--no-span', '--spread', '5', '--seed', '3'],
      { set: short, span: false, spread: { draws: 5, seed: 3 } },
    ],
  ];
  const jobs = asked.map(([, , job]) => `${JSON.stringify(job)}\n`).join('');
  const { stdout, stderr, status } = stint(['--batch', '-'], jobs);
  const lines = stdout.split('\n');

  it('and all of them end well', () => {
    expect([status, stderr, lines.length]).toEqual([0, '', asked.length + 1]);
  });

  it.each(asked.map(([name, args], i) => [name, args, i] as const))('%s', (_, args, i) => {
    expect(stint([...args, '--json']).stdout).toBe(`${lines[i]}\n`);
  });
});

describe('one line in, one line out', () => {
  // the first runs longest: whoever writes what is done first puts it last
  const jobs = [
    { id: 'slow', set: { 'stint.laps': 60 }, span: false },
    { id: { of: ['any', null, 1.5] }, set: short, span: false },
    ...Array.from({ length: 200 }, (_, id) => ({ id, nope: 1 })),
    { id: 'twice', set: short, span: false },
    { id: 'twice', set: short, span: false },
    { id: 'äöü\u2028', set: short, span: false },
    { id: null, nope: 1 },
  ];
  const text = ['\uFEFF', ...jobs.map((job) => `${JSON.stringify(job)}\r\n`), '\r\n{"id":"last"'].join('');
  const path = file('jobs.jsonl', text);
  const { stdout, status } = stint(['--batch', path, '--threads', '2']);
  const results = resultsIn(stdout);

  it('in the order of the lines, each with the id that was given', () => {
    expect(results.map(({ id }) => id)).toEqual([...jobs.map(({ id }) => id), undefined, undefined]);
  });

  it('an empty line and one that breaks off too', () => {
    expect(results.slice(-2)).toMatchObject([
      { problems: [{ key: 'line', hint: 'the line is empty' }] },
      { problems: [{ key: 'line', value: `'{"id":"last"'`, expected: 'a JSON object' }] },
    ]);
  });

  it('and ends with 1 where a line had problems, with nothing on standard error', () => {
    expect(status).toBe(1);
    expect(results.filter((result) => !result.problems)).toHaveLength(5);
  });

  it('the same lines give the same bytes on one thread', () => {
    expect(stint(['--batch', '-', '--threads', '1'], text).stdout).toBe(stdout);
  });

  it('none for an empty file', () => {
    expect(stint(['--batch', file('empty.jsonl', '')])).toMatchObject({ status: 0, stdout: '', stderr: '' });
  });
});

describe('a line with problems is answered with each of them', () => {
  const cases: [string, unknown, Partial<Problem>[]][] = [
    ['no object', [1], [{ key: 'job', value: '[1]', expected: 'an object' }]],
    ['no spread', { spread: [] }, [{ key: 'spread', value: '[]', expected: 'an object' }]],
    [
      'unknown keys and values that are none',
      { sett: 1, spread: { draws: 0, sed: 2 }, span: 'no', set: [], trace: 7, scenario: 3 },
      [
        { key: 'scenario', value: '3', expected: 'a file or an object' },
        { key: 'trace', value: '7', expected: 'a file' },
        { key: 'set', value: '[]', expected: 'an object of keys and values' },
        { key: 'spread.draws', value: '0', expected: 'a whole number, 1 to 10000' },
        { key: 'spread.sed', value: '2', expected: 'a key of the spread: draws, seed' },
        { key: 'span', value: "'no'", expected: 'true or false' },
        { key: 'sett', value: '1', expected: 'a key of a job: id, scenario, trace, set, spread, span' },
      ],
    ],
    [
      'settings',
      { set: { 'blanking_pct.front': 140, 'no.key': 1, 'conditions.wet': 'true' } },
      [
        { key: 'no.key', value: '1', expected: 'a key of the scenario that holds one value' },
        { key: 'conditions.wet', value: "'true'", expected: 'true or false' },
        { key: 'blanking_pct.front', value: '140', expected: '0 to 100' },
      ],
    ],
    ['values of a scenario', { scenario: { stint: { laps: 0 } } }, [{ key: 'stint.laps', value: '0' }]],
    ['keys of a scenario', { scenario: { stnt: {} } }, [{ key: 'stnt', expected: 'a key of the scenario' }]],
    [
      'a scenario that is not there',
      { scenario: 'missing.json' },
      [{ key: 'scenario', value: "'missing.json'", hint: expect.stringContaining('ENOENT') as string }],
    ],
    [
      'a trace that is a device',
      { trace: '/dev/zero' },
      [{ key: 'trace', hint: expect.stringContaining('it is a device') as string }],
    ],
    [
      'a scenario that is a device',
      { scenario: '/dev/zero' },
      [{ key: 'scenario', hint: expect.stringContaining('it is a device') as string }],
    ],
    [
      'a scenario that is a folder',
      { scenario: folder },
      [{ key: 'scenario', hint: expect.stringContaining('EISDIR') as string }],
    ],
    ['a trace that is not there', { trace: 'missing.csv' }, [{ key: 'trace', value: "'missing.csv'" }]],
    [
      'a trace with a question',
      { trace: 'test/fixtures/traces/speed-without-unit.csv' },
      [{ key: 'trace', hint: expect.stringContaining('km/h or mph') as string }],
    ],
    [
      'a trace that cannot be driven',
      { trace: 'test/fixtures/traces/gap.csv' },
      [{ key: 'trace', hint: expect.stringMatching(/^nothing for 3\.3\ss/) as string }],
    ],
  ];
  const jobs = cases.map(([, job], id) => (Array.isArray(job) ? job : { id, ...(job as object) }));
  const { stdout, stderr } = stint(['--batch', '-'], jobs.map((job) => `${JSON.stringify(job)}\n`).join(''));
  const results = resultsIn(stdout);

  it.each(cases.map(([name, , problems], i) => [name, problems, i] as const))('%s', (_, problems, i) => {
    expect(results[i]!.problems).toHaveLength(problems.length);
    expect(results[i]!.problems).toEqual(
      expect.arrayContaining(problems.map((p) => expect.objectContaining(p) as Problem)),
    );
    expect(Object.keys(results[i]!.problems![0]!)).toEqual(['key', 'value', 'expected', 'hint']);
    expect(stderr).toBe('');
  });

  it('an id that nests too deep to be written is left out, and the batch goes on', () => {
    const deep = `{"id":${'['.repeat(40_000)}${']'.repeat(40_000)},"nope":1}`;
    expect(resultsIn(stint(['--batch', '-'], `${deep}\n{"id":2,"nope":1}\n`).stdout)).toEqual([
      { problems: [expect.objectContaining({ key: 'job', expected: 'a job that can be run' })] },
      { id: 2, problems: [expect.objectContaining({ key: 'nope' })] },
    ]);
  });

  it('an id that JSON cannot keep is not given back changed', () => {
    const [result] = resultsIn(stint(['--batch', '-'], '{"id": 12345678901234567890}').stdout);
    expect(result).toEqual({ problems: [expect.objectContaining({ key: 'id' })] });
  });
});

describe('what cannot begin ends with 2 and nothing on standard output', () => {
  it.each([
    [['--batch', 'missing.jsonl'], /^--batch: expected jobs .*, got 'missing\.jsonl' \(ENOENT: .*\n$/],
    [['--batch', folder], /^--batch: expected jobs .* \(EISDIR: .*\n$/],
    [['--batch', '-', '--threads', '0'], /^--threads: expected a whole number, 1 to 1000, got '0'\n$/],
    [['--batch', '-', '--json'], /^command line: --batch goes with --threads only.*\nusage: /],
    [['--batch', '-', 'mine.json'], /^command line: --batch goes with --threads only.*\nusage: /],
    [['--threads', '2'], /^command line: --threads goes with --batch\nusage: /],
  ] as [string[], RegExp][])('%j', (args, said) => {
    const { status, stdout, stderr } = stint(args);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(said);
  });
});
