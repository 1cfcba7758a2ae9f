import { describe, expect, it } from 'vitest';
import { filesUnder, isSource, textOf } from '../support/tree.ts';

/** Where the names are that one chooses from. */
const CHOICE = 'web/frame/UnitsPart.svelte';

const withoutComments = (text: string): string =>
  text.replace(/\/\*[^]*?\*\/|<!--[^]*?-->/g, '').replace(/(?<!:)\/\/.*$/gm, '');

/** A unit that can be chosen, other than alone in quotes, as `unitName('°C')` takes it. */
const WRITTEN = /(?<!['"`])(°[CF]|km\/h|\bmph)|(°[CF]|km\/h|mph\b)(?!['"`])|\}(\s|&nbsp;)(K|mm|kPa|g\/s)\b/g;

const written = (path: string): string[] =>
  [...withoutComments(textOf(path)).matchAll(WRITTEN)].map(([unit]) => `${path}: ${unit}`);

describe('a unit in print', () => {
  it('is asked of web/display, which knows the one chosen', () => {
    const sources = filesUnder('web').filter(isSource);
    const shown = sources.filter((path) => !path.startsWith('web/display/') && path !== CHOICE);
    expect(shown.flatMap(written)).toEqual([]);
  });
});
