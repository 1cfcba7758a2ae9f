import { describe, expect, it } from 'vitest';
import { filesUnder, textOf } from '../support/tree.ts';

const isBinary = (path: string): boolean => /\.(png|ico|woff2|jpg|pdf)$/.test(path);
const texts = filesUnder().filter((path) => !isBinary(path) && path !== 'package-lock.json');

const isDocument = (path: string): boolean => path.endsWith('.md') || /(^|\/)LICEN[CS]E/.test(path);
const isAllowedAddress = (address: string): boolean =>
  /^https?:\/\/(www\.w3\.org\/|localhost\b|127\.0\.0\.1\b)/.test(address);

const machinePath = /(?<![\w.$}])\/(tmp|home|work)\/\S*/g;
const address = /https?:\/\/\S*/g;

const found = (path: string, pattern: RegExp): string[] => textOf(path).match(pattern) ?? [];

describe('the tree', () => {
  it("names no folder of somebody's machine", () => {
    expect(texts.flatMap((path) => found(path, machinePath).map((hit) => `${path}: ${hit}`))).toEqual([]);
  });

  it('has no address outside its documents', () => {
    const strays = texts
      .filter((path) => !isDocument(path))
      .flatMap((path) =>
        found(path, address)
          .filter((hit) => !isAllowedAddress(hit))
          .map((hit) => `${path}: ${hit}`),
      );
    expect(strays).toEqual([]);
  });

  it('locks versions without naming where they were fetched', () => {
    expect(textOf('package-lock.json')).not.toContain('"resolved"');
  });
});
