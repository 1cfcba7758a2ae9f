import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { filesUnder, root, textOf } from '../support/tree.ts';

const isRelative = (link: string): boolean => !/^([a-z]+:|#)/i.test(link);

function brokenLinks(document: string): string[] {
  const links = [...textOf(document).matchAll(/\]\(([^)\s]+)[^)]*\)/g)].map(([, link = '']) => link);
  return links
    .filter(isRelative)
    .filter((link) => !existsSync(join(root, dirname(document), decodeURI(link.replace(/#.*/, '')))))
    .map((link) => `${document}: ${link}`);
}

describe('documents', () => {
  it('have no relative link that leads nowhere', () => {
    const documents = filesUnder().filter((path) => path.endsWith('.md'));
    expect(documents.flatMap(brokenLinks)).toEqual([]);
  });
});
