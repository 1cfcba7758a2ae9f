/** What a person typed into a number field. Comma or point, with or without the unit. Pure. */

/** The number typed, or null if it is none. */
export function typedNumber(text: string, unit = ''): number | null {
  const bare = text
    .replaceAll('\u2212', '-')
    .replaceAll(/\s/g, '')
    .replace(new RegExp(`${unit.replaceAll(/[^\w°%]/g, '.')}$`, 'i'), '')
    .replace(',', '.');
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(bare) ? Number(bare) : null;
}

/** One line that names what is allowed, what was typed, and that nothing is lost. */
export function refusal(expected: string, typed: string, kept: string): string {
  const shown = typed.trim() === '' ? 'nothing' : `“${typed.trim().slice(0, 24)}”`;
  return `Expected ${expected}, got ${shown}. ${kept} stays.`;
}
