/** What a person typed into a number field. Comma or point, with or without a unit of its kind. */
import { fromUnit, inUnit, OTHERS } from '../display/units.ts';

const MINUS = '\u2212';

/** The number typed, in the unit shown, or null if it is none: "80 F" is 26.67 where °C are shown. */
export function typedNumber(text: string, unit = ''): number | null {
  const bare = text.replaceAll(MINUS, '-').replaceAll(/\s/g, '');
  const [, number = '', word = ''] = /^([+-]?[\d.,]+)(.*)$/.exec(bare) ?? [];
  // 1,200 is one thing here and a thousand times as much there
  if (/^[+-]?\d{1,3}(,\d{3})+$/.test(number)) return null;
  const plain = number.replace(',', '.');
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? typedIn(Number(plain), word, unit) : null;
}

/** As a unit is typed: without case, signs and blanks. "kph" is said for km/h, a quote is an inch. */
const bare = (unit: string): string =>
  unit
    .toLowerCase()
    .replace(/[°/.\s]/g, '')
    .replace(/^lbs/, 'lb')
    .replace('kph', 'kmh')
    .replace('"', 'in');

/** A number typed with a unit, in the unit shown; null where that is none of its kind. */
function typedIn(value: number, typed: string, shown: string): number | null {
  const word = bare(typed);
  if (word === '' || word === bare(shown)) return value;
  for (const [own, [name, times, plus = 0]] of Object.entries(OTHERS)) {
    if (own === 'K') continue;
    if (name === shown && word === bare(own)) return inUnit(value, { times, plus });
    if (own === shown && word === bare(name)) return fromUnit(value, { times, plus });
  }
  return null;
}

/** "0 to 100"; ends that are round in another unit only are rounded inwards, so that what is said is allowed. */
export function rangeText(min: number, max: number): string {
  const said = (end: number, inwards: (value: number) => number): number => {
    const parts = Math.abs(end) < 100 ? 100 : 1;
    return Number(end.toFixed(2)) === end ? end : inwards(end * parts) / parts;
  };
  return `${said(min, Math.ceil)} to ${said(max, Math.floor)}`.replaceAll('-', MINUS);
}

/** One line that names what is allowed, what was typed, and that nothing is lost. */
export function refusal(expected: string, typed: string, kept: string): string {
  const shown = typed.trim() === '' ? 'nothing' : `“${typed.trim().slice(0, 24)}”`;
  return `Expected ${expected}, got ${shown}. ${kept} stays.`;
}
