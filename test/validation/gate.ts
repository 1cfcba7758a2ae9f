/**
 * The gate that every validation case passes: what the engine computes against what a published source says.
 * A case is a folder with source.md (who published the numbers), data.csv (the numbers, SI), case.ts (exports
 * `compute`) and case.json (title, and a tolerance with its reason for each compared column).
 */

/** One line of data.csv; lines that begin with # are comments. An empty cell is NaN and is not compared. */
export type Row = Readonly<Record<string, number>>;
/** Engine's values for the rows, in their order, under the names of the columns they are compared with. */
export type Compute = (rows: readonly Row[]) => readonly Row[];

export interface Tolerance {
  readonly relative?: number;
  readonly absolute?: number;
  /** Why it is this wide. */
  readonly why: string;
}

export interface ValidationCase {
  readonly name: string;
  readonly title: string;
  readonly source: string;
  readonly data: string;
  readonly tolerance: Readonly<Record<string, Tolerance>>;
  readonly compute: Compute;
}

export interface Verdict {
  readonly column: string;
  readonly compared: number;
  /** Largest error over what is allowed there; above 1 is a failure, NaN is one too. */
  readonly worstShare: number;
  readonly worstError: number;
  /** The published value at which it occurs. */
  readonly expected: number;
}

export function parseData(text: string): Row[] {
  const lines = text.split('\n').filter((line) => line.trim() !== '' && !line.startsWith('#'));
  const [header = [], ...cells] = lines.map((line) => line.split(',').map((cell) => cell.trim()));
  return cells.map((row) =>
    Object.fromEntries(header.map((column, i) => [column, row[i] ? Number(row[i]) : NaN])),
  );
}

export function judge(validation: ValidationCase): Verdict[] {
  const rows = parseData(validation.data);
  const computed = validation.compute(rows);
  return Object.entries(validation.tolerance).map(([column, tolerance]) =>
    judgeColumn(column, tolerance, { rows, computed }),
  );
}

function judgeColumn(
  column: string,
  tolerance: Tolerance,
  { rows, computed }: { rows: readonly Row[]; computed: readonly Row[] },
): Verdict {
  const compared = rows.flatMap((row, i) => {
    const expected = row[column] ?? NaN;
    if (Number.isNaN(expected)) return [];
    const error = (computed[i]?.[column] ?? NaN) - expected;
    const allowed = (tolerance.absolute ?? 0) + (tolerance.relative ?? 0) * Math.abs(expected);
    return [{ expected, error, share: Math.abs(error) / allowed }];
  });
  const none = { expected: 0, error: 0, share: 0 };
  const worst =
    compared.find(({ share }) => Number.isNaN(share)) ??
    compared.reduce((a, b) => (a.share >= b.share ? a : b), none);
  const { expected, error: worstError, share: worstShare } = worst;
  return { column, compared: compared.length, worstShare, worstError, expected };
}

export function report(results: readonly { case: ValidationCase; verdicts: readonly Verdict[] }[]): string {
  const lines = results.flatMap(({ case: { title, tolerance }, verdicts }) =>
    verdicts.map(({ column, compared, worstError, worstShare, expected }) => {
      const { relative, absolute } = tolerance[column] ?? {};
      const allowed = [relative && `${Number((relative * 100).toPrecision(3))} %`, absolute]
        .filter(Boolean)
        .join(' + ');
      return `| ${title} | ${column} | ${compared} | ${worstError.toPrecision(2)} at ${expected} | ${allowed} | ${worstShare.toFixed(2)} |`;
    }),
  );
  return [
    '| case | column | values | worst error | allowed | share of it |',
    '|---|---|---|---|---|---|',
    ...lines,
    '',
  ].join('\n');
}
