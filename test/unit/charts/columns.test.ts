import { describe, expect, it } from 'vitest';
import { traceLine } from '../../../web/charts/columns.ts';

describe('a dense trace', () => {
  const values = Array.from({ length: 10_000 }, (_, i) => Math.sin(i / 7) * 50 + (i === 5003 ? 200 : 0));
  const line = traceLine(
    0,
    9999,
    (i) => i / 100,
    (i) => values[i] ?? 0,
  );

  it('keeps at most four points of a pixel column', () => {
    expect(line.length).toBeLessThanOrEqual(400);
  });

  it('keeps the highest and the lowest value', () => {
    expect(Math.max(...line.map(({ y }) => y))).toBe(Math.max(...values));
    expect(Math.min(...line.map(({ y }) => y))).toBe(Math.min(...values));
  });

  it('stays in the order of its samples', () => {
    expect(line.every(({ x }, i) => i === 0 || x >= (line[i - 1]?.x ?? 0))).toBe(true);
  });

  it('keeps every sample where they are sparse', () => {
    const sparse = traceLine(
      10,
      14,
      (i) => i * 5,
      (i) => i,
    );
    expect(sparse.map(({ y }) => y)).toEqual([10, 11, 12, 13, 14]);
  });
});
