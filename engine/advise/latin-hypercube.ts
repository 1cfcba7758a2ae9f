/** Draws of what is not known: spread evenly over every unknown, and the same for the same seed. */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/**
 * Shares between 0 and 1, one row a draw and one column an unknown. Each column is cut into as many equal strata as there
 * are draws, and each stratum is hit once, in an order of the column's own.
 *
 * Source: McKay, Beckman & Conover, Technometrics 21 (1979) 239.
 */
export function latinHypercube(draws: number, unknowns: number, seed: number): Float64Array[] {
  const random = xoroshiro128plus(seed);
  const rows = Array.from({ length: draws }, () => new Float64Array(unknowns));
  for (let column = 0; column < unknowns; column++) {
    const strata = Array.from({ length: draws }, (_, i) => i);
    for (let i = draws - 1; i > 0; i--) {
      const j = uniformInt(random, 0, i);
      [strata[i], strata[j]] = [strata[j]!, strata[i]!];
    }
    strata.forEach((stratum, draw) => {
      rows[draw]![column] = (stratum + uniformFloat64(random)) / draws;
    });
  }
  return rows;
}

/**
 * Quantile of the triangular distribution: nothing outside low and high, and the likely value the most probable.
 *
 *     x = a + √(p·(b − a)·(c − a))          for p ≤ (c − a)/(b − a)
 *     x = b − √((1 − p)·(b − a)·(b − c))    above
 *
 * @remarks a, b, c: low, high, likely; 0 ≤ p ≤ 1. Source: by integration of the density, two straight lines.
 * @returns value that is not exceeded with probability p [as low and high]
 * @example quantileTriangular(0.5, { low: 0, likely: 1, high: 2 }) // => 1
 */
export function quantileTriangular(
  share: number,
  { low, likely, high }: { low: number; likely: number; high: number },
): number {
  const width = high - low;
  if (width === 0) return likely;
  return share * width <= likely - low
    ? low + Math.sqrt(share * width * (likely - low))
    : high - Math.sqrt((1 - share) * width * (high - likely));
}
