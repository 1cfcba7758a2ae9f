/** What a set of draws says of one number, in seven figures. */

export interface Quantiles {
  p5: number;
  p10: number;
  p25: number;
  p50: number;
  p75: number;
  p90: number;
  p95: number;
}

export function quantilesOf(values: readonly number[]): Quantiles {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number => quantile(sorted, share);
  return {
    p5: at(0.05),
    p10: at(0.1),
    p25: at(0.25),
    p50: at(0.5),
    p75: at(0.75),
    p90: at(0.9),
    p95: at(0.95),
  };
}

/**
 * Value below which a share of sorted values lies, in proportion between its two neighbours.
 *
 *     x = v[⌊h⌋] + (h − ⌊h⌋)·(v[⌊h⌋ + 1] − v[⌊h⌋]),  h = p·(n − 1)
 *
 * @remarks Source: Hyndman & Fan, The American Statistician 50 (1996) 361, definition 7.
 * @returns quantile, NaN of no values [as the values]
 * @example quantile([10, 20, 40], 0.75) // => 30
 */
export function quantile(sorted: readonly number[], share: number): number {
  if (sorted.length === 0) return NaN;
  const h = share * (sorted.length - 1);
  const below = sorted[Math.floor(h)]!;
  return below + (h - Math.floor(h)) * (sorted[Math.ceil(h)]! - below);
}
