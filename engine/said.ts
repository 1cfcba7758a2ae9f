/** A sentence whose quantities stay numbers: a terminal prints them in their own unit, the page in the one chosen. */

export interface Quantity {
  /** In the unit that the trade and the scenario's keys have: °C, mm, g/s; K is a difference. */
  value: number;
  /** Its upper end, where it is a range. */
  to?: number;
  unit: string;
  /** Decimals that are meant; where they are left out, as many as the number has. */
  digits?: number;
}

/** Words and quantities in turn. */
export type Said = readonly (string | Quantity)[];

/** A template in which quantities, and what was said before, keep their numbers. */
export function said(
  words: TemplateStringsArray,
  ...pieces: readonly (string | number | Quantity | Said)[]
): Said {
  return words.flatMap((word, i): Said => {
    const piece = pieces[i];
    const parts = typeof piece === 'object' ? [piece].flat() : [String(piece ?? '')];
    return [word, ...parts].filter((part) => part !== '');
  });
}

/** As it stands in a terminal: "pads reach 712 °C". */
export const printed = (sentence: Said): string =>
  sentence.map((part) => (typeof part === 'string' ? part : quantityText(part))).join('');

function quantityText({ value, to, unit, digits }: Quantity): string {
  // as a number once more: no "-0", and no zeros behind
  const text = (n: number): string => `${digits === undefined ? n : Number(n.toFixed(digits))}`;
  return `${text(value)}${to === undefined ? '' : ` to ${text(to)}`} ${unit}`;
}
