/** What a person typed into a number field. Comma or point, with or without the unit. Pure. */

/** The number typed, or null if it is none. */
export function typedNumber(text: string, unit = ''): number | null {
  const bare = text
    .replaceAll('\u2212', '-')
    .replaceAll(/\s/g, '')
    .replace(new RegExp(`${unit.replaceAll(/[^\w°%]/g, '.')}$`, 'i'), '');
  // 1,200 is one thing here and a thousand times as much there
  if (/^[+-]?\d{1,3}(,\d{3})+$/.test(bare)) return null;
  const plain = bare.replace(',', '.');
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : null;
}

/** One line that names what is allowed, what was typed, and that nothing is lost. */
export function refusal(expected: string, typed: string, kept: string): string {
  const shown = typed.trim() === '' ? 'nothing' : `“${typed.trim().slice(0, 24)}”`;
  return `Expected ${expected}, got ${shown}. ${kept} stays.`;
}

/** The same where nothing was typed but a thumb or a step asked for more than can be. */
export const standing = (expected: string, kept: string): string => `Expected ${expected}. ${kept} stays.`;
