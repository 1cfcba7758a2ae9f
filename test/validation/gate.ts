/**
 * The gate that every validation case passes: what the engine computes against what somebody else says.
 * A case is a folder with source.md (who says so, and how the numbers were got), data.csv (the numbers, SI), case.ts
 * (exports `compute`) and case.json (what is compared: for each column its meaning and unit, how well the source knows
 * it, and a tolerance with its reason).
 */

/** One line of data.csv; lines that begin with # are comments. An empty cell is NaN and is not compared. */
export type Row = Readonly<Record<string, number>>;
/** Engine's values for the rows, in their order, under the names of the columns they are compared with. */
export type Compute = (rows: readonly Row[]) => readonly Row[];

/** What part of the engine a case looks at, in the order of the report. */
export const GROUPS = [
  'air',
  'conduction',
  'convection',
  'flow',
  'radiation',
  'heat',
  'speed',
  'reading',
  'whole',
] as const;
export type Group = (typeof GROUPS)[number];

/**
 * What agreement would prove. `measurement`: the law holds. `solution`: our arithmetic is right, computed by another way
 * from first principles. `author`: two authors agree on the law. `code`: we typed the author's law as others did.
 */
export const PROOFS = ['measurement', 'solution', 'author', 'code'] as const;
export type Proof = (typeof PROOFS)[number];

export interface Column {
  /** What the column is, in words. */
  readonly quantity: string;
  /** Empty for a pure number. */
  readonly unit: string;
  /** How well the source knows its number, in words. */
  readonly uncertainty: string;
  readonly relative?: number;
  readonly absolute?: number;
  /** Why the tolerance is this wide. */
  readonly why: string;
}

/** What case.json holds. */
export interface Statement {
  readonly title: string;
  readonly group: Group;
  readonly proof: Proof;
  /** The source in a few words. */
  readonly by: string;
  readonly tolerance: Readonly<Record<string, Column>>;
}

export interface ValidationCase extends Statement {
  readonly name: string;
  readonly source: string;
  readonly data: string;
  readonly compute: Compute;
}

export interface Verdict {
  readonly column: string;
  readonly compared: number;
  /** Size of the errors: relative where the tolerance has a relative part, else in the column's unit. */
  readonly mean: number;
  readonly median: number;
  /** At least nine of ten errors are no larger. */
  readonly p90: number;
  readonly max: number;
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
  return Object.entries(validation.tolerance).map(([name, column]) =>
    judgeColumn(name, column, { rows, computed }),
  );
}

function judgeColumn(
  name: string,
  column: Column,
  { rows, computed }: { rows: readonly Row[]; computed: readonly Row[] },
): Verdict {
  const compared = rows.flatMap((row, i) => {
    const expected = row[name] ?? NaN;
    if (Number.isNaN(expected)) return [];
    const error = (computed[i]?.[name] ?? NaN) - expected;
    const allowed = (column.absolute ?? 0) + (column.relative ?? 0) * Math.abs(expected);
    const size = Math.abs(error) / (column.relative === undefined ? 1 : Math.abs(expected));
    return [{ expected, error, size, share: Math.abs(error) / allowed }];
  });
  const none = { expected: 0, error: 0, size: 0, share: 0 };
  const worst =
    compared.find(({ share }) => Number.isNaN(share)) ??
    compared.reduce((a, b) => (a.share >= b.share ? a : b), none);
  const { expected, error: worstError, share: worstShare } = worst;
  const sizes = compared.map(({ size }) => size).sort((a, b) => a - b);
  return { column: name, compared: sizes.length, ...spreadOf(sizes), worstShare, worstError, expected };
}

/** Of sizes in rising order; the 90th percentile by nearest rank. */
export function spreadOf(sizes: readonly number[]): Pick<Verdict, 'mean' | 'median' | 'p90' | 'max'> {
  const at = (place: number): number => sizes[Math.min(sizes.length - 1, Math.max(0, place))] ?? NaN;
  const middle = (sizes.length - 1) / 2;
  return {
    mean: sizes.reduce((sum, size) => sum + size, 0) / sizes.length,
    median: (at(Math.floor(middle)) + at(Math.ceil(middle))) / 2,
    p90: at(Math.ceil(0.9 * sizes.length) - 1),
    max: at(sizes.length - 1),
  };
}
