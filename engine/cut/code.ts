/**
 * The code on a panel's face: letters and digits that nobody takes for one another, the last one a check character.
 *
 * The check is a pure system of ISO/IEC 7064:2003, Σ cᵢ rⁱ⁻¹ ≡ 1 (mod M) from the right, made for our alphabet by the rule of its
 * annex B: M is the number of characters, a prime, and r a number whose powers take every value but 0. It finds every single
 * wrong character and every exchange of two.
 */

/** Without 0 and O, 1, I and L. */
export const CODE_ALPHABET = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';

const MODULUS = CODE_ALPHABET.length; // 31
/** 3 is the least number whose powers run through 1 to 30 modulo 31. */
const RADIX = 3;
/** Characters that stand for what the panel was made for. */
const MARK_LENGTH = 4;
/** With letter and axle before these, and the check behind them. */
const CODE_LENGTH = MARK_LENGTH + 3;

/** A text of the alphabet with its check character behind it. */
export function withCheck(body: string): string {
  const sum = RADIX * weighted(body);
  const check = (((1 - sum) % MODULUS) + MODULUS) % MODULUS;
  return body + CODE_ALPHABET[check]!;
}

/** Whether a text is of the alphabet and its check character is right. Blanks are passed over, small letters are capitals. */
export function isCode(text: string): boolean {
  const code = text.replace(/\s/g, '').toUpperCase();
  return code.length > 1 && [...code].every((c) => CODE_ALPHABET.includes(c)) && weighted(code) === 1;
}

/** Σ cᵢ rⁱ⁻¹ modulo M, counted from the right. */
const weighted = (code: string): number =>
  [...code].reduce((sum, c) => (sum * RADIX + CODE_ALPHABET.indexOf(c)) % MODULUS, 0);

/**
 * The code of a panel: its letter, F or R for its axle, four characters that follow from everything it was made for, and the check.
 * Two panels that differ in anything differ in their code but for one chance in 900 000.
 */
export function panelCode(letter: string, axle: 'front' | 'rear', madeFor: readonly string[]): string {
  let mark = hashed(madeFor.join('\n'));
  let characters = '';
  for (let i = 0; i < MARK_LENGTH; i++) {
    characters += CODE_ALPHABET[mark % MODULUS]!;
    mark = Math.floor(mark / MODULUS);
  }
  return withCheck(`${letter}${axle === 'front' ? 'F' : 'R'}${characters}`);
}

/** Whether a text is as long as the code of a panel and yet none: somebody misread it, or mistyped it. */
export const isMisread = (text: string): boolean => {
  const typed = text.replace(/\s/g, '');
  return /^[a-z0-9]+$/i.test(typed) && typed.length === CODE_LENGTH && !isCode(typed);
};

/** FNV-1a, 32 bit. */
function hashed(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}
