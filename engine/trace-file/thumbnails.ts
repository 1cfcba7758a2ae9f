/** Columns in little, to be recognised at a glance: bare where the log has nothing. */

const MOST = 96;

export interface Overview {
  /** Rows that are shown. */
  rows: ArrayLike<number>;
  /** Where each stands, rising: its time, or its order. */
  at: ArrayLike<number>;
  /** Further apart than this there is nothing between two rows. */
  gap: number;
}

/** Means over equal parts of the log; NaN where nothing was logged, and wherever a hole reaches into a part. */
export function thumbnailOf(values: Float64Array, { rows, at, gap }: Overview): Float64Array {
  const n = Math.min(MOST, rows.length);
  const sums = new Float64Array(n);
  const counts = new Uint32Array(n);
  const holes = new Uint8Array(n);
  const start = at[0] ?? 0;
  const span = (at[rows.length - 1] ?? 0) - start;
  const part = (k: number): number =>
    span > 0 ? Math.min(n - 1, Math.floor(((at[k]! - start) / span) * n)) : k;
  let last = -1;
  for (let k = 0; k < rows.length; k++) {
    const value = values[rows[k]!]!;
    if (Number.isNaN(value)) continue;
    const here = part(k);
    if (last >= 0 && at[k]! - at[last]! > gap) holes.fill(1, part(last), here + 1);
    sums[here]! += value;
    counts[here]! += 1;
    last = k;
  }
  return filled(
    Float64Array.from(sums, (sum, i) => (holes[i] || counts[i] === 0 ? NaN : sum / counts[i]!)),
    holes,
  );
}

/** A part without a row that is no hole lies between two rows: it shows the one before. */
function filled(means: Float64Array, holes: Uint8Array): Float64Array {
  const last = means.findLastIndex((value) => !Number.isNaN(value));
  for (let i = 1; i < last; i++) if (!holes[i] && Number.isNaN(means[i]!)) means[i] = means[i - 1]!;
  return means;
}
