import { describe, expect, it } from 'vitest';
import { latinHypercube, quantileTriangular } from '../../../engine/advise/latin-hypercube.ts';

const columns = (rows: Float64Array[]): number[][] =>
  Array.from(rows[0]!, (_, column) => rows.map((row) => row[column]!));

describe('draws of many unknowns', () => {
  it('hit every stratum of every unknown once', () => {
    const draws = 40;
    for (const column of columns(latinHypercube(draws, 60, 3))) {
      const strata = column.map((share) => Math.floor(share * draws)).sort((a, b) => a - b);
      expect(strata).toEqual(Array.from({ length: draws }, (_, i) => i));
    }
  });

  it('are the same for the same seed and others for another', () => {
    expect(latinHypercube(20, 5, 7)).toEqual(latinHypercube(20, 5, 7));
    expect(latinHypercube(20, 5, 8)).not.toEqual(latinHypercube(20, 5, 7));
  });

  it('move each unknown in an order of its own', () => {
    const [first, ...others] = columns(latinHypercube(100, 30, 1));
    const correlations = others.map((other) => correlation(first!, other));
    expect(Math.max(...correlations.map(Math.abs))).toBeLessThan(0.35);
  });

  it('are none where none is asked for', () => {
    expect(latinHypercube(0, 3, 1)).toEqual([]);
    expect(latinHypercube(2, 0, 1).map((row) => row.length)).toEqual([0, 0]);
  });
});

function correlation(a: number[], b: number[]): number {
  const mean = (of: number[]): number => of.reduce((sum, x) => sum + x, 0) / of.length;
  const [ma, mb] = [mean(a), mean(b)];
  const cov = mean(a.map((x, i) => (x - ma) * (b[i]! - mb)));
  return cov / Math.sqrt(mean(a.map((x) => (x - ma) ** 2)) * mean(b.map((x) => (x - mb) ** 2)));
}

describe('the triangular distribution', () => {
  const range = { low: 2, likely: 3, high: 7 };

  it('goes from low to high', () => {
    expect(quantileTriangular(0, range)).toBe(2);
    expect(quantileTriangular(1, range)).toBe(7);
  });

  it('has below the likely value the share of the range that lies there', () => {
    expect(quantileTriangular(1 / 5, range)).toBeCloseTo(3, 12);
  });

  it('is turned back by its own integral', () => {
    const below = (x: number): number => (x <= 3 ? (x - 2) ** 2 / (5 * 1) : 1 - (7 - x) ** 2 / (5 * 4));
    for (const share of [0.01, 0.1, 0.25, 0.5, 0.75, 0.95, 0.999]) {
      expect(below(quantileTriangular(share, range))).toBeCloseTo(share, 12);
    }
  });

  it('has the mean of its three corners', () => {
    const n = 20_000;
    const sum = Array.from({ length: n }, (_, i) => quantileTriangular((i + 0.5) / n, range));
    expect(sum.reduce((a, b) => a + b, 0) / n).toBeCloseTo(4, 4);
  });

  it('allows the likely value at an end, and a range of no width', () => {
    expect(quantileTriangular(0.75, { low: 0, likely: 0, high: 1 })).toBeCloseTo(0.5, 12);
    expect(quantileTriangular(0.25, { low: 0, likely: 1, high: 1 })).toBeCloseTo(0.5, 12);
    expect(quantileTriangular(0.3, { low: 4, likely: 4, high: 4 })).toBe(4);
  });
});
