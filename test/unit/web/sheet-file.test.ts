import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fileName, fileText, isSheetFile, readFile } from '../../../web/state/sheet-file.ts';
import restart from '../../../scenarios/stints/restart.json' with { type: 'json' };
import { anyScenario } from '../../support/random-scenario.ts';
import { shipped } from '../../support/shipped.ts';

const [, first] = shipped[0]!;
const problemsOf = (text: string): readonly string[] => {
  const read = readFile(text);
  return read.ok ? [] : read.problems;
};
const scenarioOf = (text: string) => {
  const read = readFile(text);
  if (!read.ok) throw new Error(read.problems.join('\n'));
  return read.scenario;
};

describe('a file of the sheet', () => {
  it.each(shipped)('brings back %s', (_, scenario) => {
    expect(scenarioOf(fileText(scenario))).toEqual(scenario);
  });

  it('is the same text when it is opened and saved again, whatever it holds beyond the schema', () => {
    const notes = fc.dictionary(fc.string(), fc.jsonValue({ maxDepth: 2 }), { maxKeys: 4 });
    fc.assert(
      fc.property(anyScenario, notes, notes, (scenario, wide, deep) => {
        const text = fileText({ ...wide, ...scenario, car: { ...deep, ...scenario.car, crew: deep } });
        expect(fileText(scenarioOf(text))).toBe(text);
      }),
      { numRuns: 40, seed: 11 },
    );
  });

  it('written by hand in another order and layout keeps every key in its place, but for what it is', () => {
    const { version, name, purpose, ...rest } = first;
    const { stint, ...others } = rest;
    const byHand = { stint, note: 'ours', ...others, name, version, purpose };
    const again = fileText(scenarioOf(JSON.stringify(byHand)));
    expect(JSON.stringify(JSON.parse(again))).toBe(
      JSON.stringify({ version, name, purpose, stint, note: 'ours', ...others }),
    );
  });

  it('says what it is first, and lists of numbers in one line', () => {
    const lines = fileText(first).split('\n');
    expect(lines.slice(1, 4).map((line) => line.trim().split(':')[0])).toEqual([
      '"version"',
      '"name"',
      '"purpose"',
    ]);
    expect(lines.filter((line) => line.includes('panels_pct'))).toEqual([
      expect.stringMatching(/^ {8}"panels_pct": \[\d+(, \d+)+\],?$/),
      expect.stringMatching(/^ {8}"panels_pct": \[\d+(, \d+)+\],?$/),
    ]);
  });

  it('may be one of the catalogue, which names its car and circuit', () => {
    expect(scenarioOf(JSON.stringify(restart)).name).toBe(restart.name);
    expect(problemsOf(JSON.stringify({ ...restart, car: 'none' }))).toEqual([
      'file: expected a car and a circuit of the library',
    ]);
  });

  it('is named by car, circuit and day', () => {
    expect(fileName(first, new Date(2026, 2, 7).getTime())).toBe('heavy-closed-car-sorrelby-2026-03-07.json');
    const odd = { ...first, car: { ...first.car, name: ' Möhre / 7:"?' } };
    expect(fileName(odd, new Date(2026, 10, 26).getTime())).toBe('mohre-7-sorrelby-2026-11-26.json');
  });
});

describe('a file that is wrong', () => {
  it('names every problem with its key, its value and what was expected', () => {
    const text = JSON.stringify({ conditions: { ambient_C: 295 }, blanking_pct: { front: '40' } });
    expect(problemsOf(text)).toEqual([
      'conditions.ambient_C: expected -30 to 55, got 295 (kelvin?)',
      "blanking_pct.front: expected 0 to 100, got '40' (a number in quotes?)",
    ]);
  });

  it.each([
    ['', 'file: expected JSON, got nothing'],
    ['{\n  "version": 1,\n  "name" "x" }', 'file: expected JSON, got text that is none (line 3, column 10)'],
    ['{ "version": 1', 'file: expected JSON, got text that is none (it ends too early)'],
    ['[1]', 'scenario: expected a JSON object, got [1]'],
    ['{"version":2}', 'version: expected at most 1, got 2 (it was written by a newer Emberlap)'],
  ])('%j says one sentence', (text, problem) => {
    expect(problemsOf(text)).toEqual([problem]);
  });
});

describe('a file that is odd', () => {
  it('names what it has without effect, and what was changed in one of an earlier version', () => {
    const read = readFile(
      '{ "conditions": { "ambient_c": 40 }, "brakes": { "front": { "duct": { "flattened": 1 } } } }',
    );
    expect(read).toMatchObject({
      ok: true,
      notes: [
        'brakes.front.duct.flattened 1 is now clearance_mm none.',
        'Kept as it is, and without effect: conditions.ambient_c.',
      ],
    });
  });
});

describe('what was dropped on the page', () => {
  it.each([
    ['a.json', 'time,speed', true],
    ['a.txt', '\uFEFF  {"version": 1}', true],
    ['a.csv', 'time,speed\n0,1', false],
    ['a', '', false],
  ])('%s with %j: the sheet itself? %s', async (name, text, is) => {
    expect(await isSheetFile(new File([text], name))).toBe(is);
  });
});
