import { describe, expect, it } from 'vitest';
import { THUMBNAIL, thumbnailPath } from '../../../web/charts/thumbnail.ts';

const path = (...values: number[]): string => thumbnailPath(Float64Array.from(values), 0, 10);

describe('a thumbnail', () => {
  it('runs from the bottom to the top over its whole width', () => {
    expect(path(0, 10)).toBe(`M0.0 37.0L${THUMBNAIL.width.toFixed(1)} 3.0`);
  });

  it('keeps a gap a gap', () => {
    expect(path(0, 10, NaN, 10, 0).match(/M/g)).toHaveLength(2);
  });

  it('shows a value alone between gaps as a dot', () => {
    expect(path(NaN, 5, NaN)).toBe('M48.0 20.0h0.1');
  });

  it('shows a constant in the middle and nothing as nothing', () => {
    expect(thumbnailPath(Float64Array.of(4, 4), 4, 4)).toBe('M0.0 20.0L96.0 20.0');
    expect(path(NaN, NaN)).toBe('');
    expect(path()).toBe('');
  });
});
