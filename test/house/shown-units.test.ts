import { describe, expect, it } from 'vitest';
import { filesUnder, isSource, textOf } from '../support/tree.ts';

/** Written as such: the names to choose from, and what the lines that are worked by hand stay in. */
const NAMES_THEM = ['web/frame/UnitsPart.svelte', 'web/pages/trust/FollowNumbers.svelte'];

const withoutComments = (text: string): string =>
  text.replace(/\/\*[^]*?\*\/|<!--[^]*?-->/g, '').replace(/(?<!:)\/\/.*$/gm, '');

/** A unit that can be chosen, other than alone in quotes, as `unitName('°C')` takes it. */
const WRITTEN = /(?<!['"`])(°[CF]|km\/h|\bmph)|(°[CF]|km\/h|mph\b)(?!['"`])|\}(\s|&nbsp;)(K|mm|kPa|g\/s)\b/g;

const written = (path: string): string[] =>
  [...withoutComments(textOf(path)).matchAll(WRITTEN)].map(([unit]) => `${path}: ${unit}`);

describe('a unit in print', () => {
  it('is asked of web/display, which knows the one chosen', () => {
    const sources = filesUnder('web').filter(isSource);
    const shown = sources.filter((path) => !path.startsWith('web/display/') && !NAMES_THEM.includes(path));
    expect(shown.flatMap(written)).toEqual([]);
  });
});
