import { describe, expect, it } from 'vitest';
import { textOf } from '../support/tree.ts';
import { GROUPS, judge, parseData, PROOFS, spreadOf, type ValidationCase } from './gate.ts';
import { caseNames, loadCases } from './load-cases.ts';
import { MODEL_FILE, modelText, REPORT_FILE, reportOf, reportText, type Report } from './report.ts';

const cases = await loadCases();

describe.each(cases)('$name', (validation) => {
  it('names its source, how well that knows its numbers, and the reason of each tolerance', () => {
    expect(validation.source).toMatch(/^Source: \S/m);
    expect(GROUPS).toContain(validation.group);
    expect(PROOFS).toContain(validation.proof);
    expect(validation.by).toMatch(/\S/);
    expect(Object.keys(validation.tolerance)).not.toEqual([]);
    for (const column of Object.values(validation.tolerance)) {
      for (const words of [column.quantity, column.uncertainty, column.why]) expect(words).toMatch(/\S/);
      expect((column.relative ?? 0) + (column.absolute ?? 0)).toBeGreaterThan(0);
    }
  });

  it('does not take a number from memory for truth', () => {
    expect(validation.source.match(/^(Source|Numbers): .*/gm)?.join()).not.toMatch(/from memory/);
  });

  it('is met within its tolerances', () => {
    for (const { column, compared, worstShare, worstError, expected } of judge(validation)) {
      const got = `${column}: worst error ${worstError.toPrecision(3)} at ${expected}`;
      expect(compared, `${column}: nothing compared`).toBeGreaterThan(0);
      expect(worstShare, got).toBeLessThanOrEqual(1);
    }
  });
});

describe('the report', () => {
  let kept: Report | undefined;
  const report = (): Report => (kept ??= reportOf(cases));
  const stale = (file: string): string => `${file} is stale: run "npm run validate"`;

  it('on the page is that of today', async () => {
    expect(textOf(REPORT_FILE), stale(REPORT_FILE)).toBe(await reportText(report()));
  });

  it("in the model's document is that of today", async () => {
    const document = textOf(MODEL_FILE);
    expect(document, stale(MODEL_FILE)).toBe(await modelText(document, report()));
  });

  it('covers every part of the engine by at least 25 cases', () => {
    expect(cases.length).toBeGreaterThanOrEqual(25);
    const covered = new Set(cases.map(({ group }) => group));
    expect(GROUPS.filter((group) => group !== 'whole' && !covered.has(group))).toEqual([]);
  });
});

describe('the gate', () => {
  const failing: ValidationCase = {
    name: 'failing',
    title: 'failing',
    group: 'air',
    proof: 'code',
    by: 'nobody',
    source: 'Source: none',
    data: '# comment\nx,y\n1,10\n2,\n3,30\n',
    tolerance: { y: { quantity: 'y', unit: '', uncertainty: 'none', relative: 0.01, why: 'test' } },
    compute: (rows) => rows.map(({ x = NaN }) => ({ y: x === 3 ? 33 : 10 })),
  };

  it('has every folder of data as a case', () => {
    expect(cases.map(({ name }) => name).sort()).toEqual(caseNames().sort());
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

  it('tells mean, median, 90th percentile and largest of the errors', () => {
    expect(judge(failing)[0]).toMatchObject({ mean: 0.05, median: 0.05, p90: 0.1, max: 0.1 });
    expect(spreadOf([1, 2, 3, 4, 5, 6, 7, 8, 9, 100])).toEqual({ mean: 14.5, median: 5.5, p90: 9, max: 100 });
    const inUnits = { y: { ...failing.tolerance['y']!, absolute: 5 } };
    delete (inUnits.y as { relative?: number }).relative;
    expect(judge({ ...failing, tolerance: inUnits })[0]).toMatchObject({ max: 3, worstShare: 0.6 });
  });
});
