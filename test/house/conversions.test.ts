import { describe, expect, it } from 'vitest';
import { filesUnder, isSource, textOf } from '../support/tree.ts';

const isHome = (path: string): boolean => path === 'engine/units.ts' || path.startsWith('web/display/');

const conversions = [
  { what: 'kelvin', pattern: /273\.15/ },
  { what: 'km/h', pattern: /[*/=]\s*3\.6\b|\b3\.6\s*[*/]/ },
  { what: 'rev/min', pattern: /2\s*\*\s*Math\.PI\s*\)?\s*\/\s*60\b|Math\.PI\s*\/\s*30\b/ },
  { what: 'rev/min', pattern: /\b60\s*\/\s*\(?\s*2\s*\*\s*Math\.PI|\b30\s*\/\s*Math\.PI|9\.549|0\.10472/ },
  { what: 'degrees', pattern: /Math\.PI\s*\)?\s*\/\s*180\b|\b180\s*\/\s*Math\.PI/ },
  { what: 'miles', pattern: /1\.?609\.?34|2\.2369/ },
  { what: 'inches, feet, pounds or psi', pattern: /\b25\.4\b|\b0?\.3048\b|0?\.453592|\b6\.?894\.?7/ },
  { what: 'degrees Fahrenheit', pattern: /\*\s*1\.8\s*\+|-\s*32\s*\)|\b9\s*\/\s*5\b|\b5\s*\/\s*9\b/ },
];

const withoutComments = (text: string): string =>
  text.replace(/\/\*[^]*?\*\/|<!--[^]*?-->/g, '').replace(/(?<!:)\/\/.*$/gm, '');

function strays(path: string): string[] {
  const code = withoutComments(textOf(path));
  return conversions.filter(({ pattern }) => pattern.test(code)).map(({ what }) => `${path}: ${what}`);
}

describe('conversions between units', () => {
  it('live in engine/units.ts and web/display/ alone', () => {
    const sources = ['engine', 'web'].flatMap(filesUnder).filter(isSource);
    expect(sources.filter((path) => !isHome(path)).flatMap(strays)).toEqual([]);
  });
});
