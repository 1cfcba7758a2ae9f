import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { filesUnder, root, textOf } from '../support/tree.ts';
import { judge, parseData, report, type Compute, type ValidationCase } from './gate.ts';

const computes = import.meta.glob<Compute>('./*/case.ts', { import: 'compute', eager: true });

const cases = Object.entries(computes).map(([path, compute]): ValidationCase => {
  const name = path.split('/')[1] ?? '';
  const read = (file: string): string => textOf(`test/validation/${name}/${file}`);
  const stated = JSON.parse(read('case.json')) as Pick<ValidationCase, 'title' | 'tolerance'>;
  return { ...stated, name, source: read('source.md'), data: read('data.csv'), compute };
});

const results: { case: ValidationCase; verdicts: ReturnType<typeof judge> }[] = [];

describe.each(cases)('$name', (validation) => {
  it('names its source and the reason of each tolerance', () => {
    expect(validation.source).toMatch(/^Source: \S/m);
    for (const { why } of Object.values(validation.tolerance)) expect(why).not.toBe('');
    expect(Object.keys(validation.tolerance)).not.toEqual([]);
  });

  it('is met within its tolerances', () => {
    const verdicts = judge(validation);
    results.push({ case: validation, verdicts });
    for (const { column, compared, worstShare, worstError, expected } of verdicts) {
      const got = `${column}: worst error ${worstError.toPrecision(3)} at ${expected}`;
      expect(compared, `${column}: nothing compared`).toBeGreaterThan(0);
      expect(worstShare, got).toBeLessThanOrEqual(1);
    }
  });
});

describe('the gate', () => {
  const failing: ValidationCase = {
    name: 'failing',
    title: 'failing',
    source: 'Source: none',
    data: '# comment\nx,y\n1,10\n2,\n3,30\n',
    tolerance: { y: { relative: 0.01, why: 'test' } },
    compute: (rows) => rows.map(({ x = NaN }) => ({ y: x === 3 ? 33 : 10 })),
  };

  it('has every folder of data as a case', () => {
    const folders = filesUnder('test/validation').filter((path) => path.endsWith('/data.csv'));
    expect(cases.length).toBe(folders.length);
  });

  it('reads numbers and leaves empty cells out', () => {
    expect(parseData(failing.data)).toEqual([
      { x: 1, y: 10 },
      { x: 2, y: NaN },
      { x: 3, y: 30 },
    ]);
    expect(judge(failing)[0]?.compared).toBe(2);
  });

  it('fails a value outside its tolerance, and a value that is not a number', () => {
    expect(judge(failing)[0]).toMatchObject({ worstError: 3, expected: 30 });
    expect(judge(failing)[0]?.worstShare).toBeCloseTo(10);
    expect(judge({ ...failing, compute: () => [] })[0]?.worstShare).toBeNaN();
  });
});

afterAll(() => {
  const table = report(results);
  mkdirSync(join(root, 'test-results'), { recursive: true });
  writeFileSync(join(root, 'test-results/validation.md'), table);
  console.log(table);
});
