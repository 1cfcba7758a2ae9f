import { describe, expect, it } from 'vitest';
import { filesUnder, isSource, textOf } from '../support/tree.ts';

const sources = ['engine', 'web'].flatMap(filesUnder).filter(isSource);

const linesOf = (path: string): number => textOf(path).trimEnd().split('\n').length;
const longerThan = (paths: string[], limit: number): string[] =>
  paths.filter((path) => linesOf(path) > limit).map((path) => `${path}: ${linesOf(path)} lines`);

describe('sizes', () => {
  it('no source file is longer than 500 lines', () => {
    expect(longerThan(sources, 500)).toEqual([]);
  });

  it('no kernel is longer than 200 lines', () => {
    const kernels = sources.filter((path) => path.startsWith('engine/') && path.includes('kernel'));
    expect(longerThan(kernels, 200)).toEqual([]);
  });
});
