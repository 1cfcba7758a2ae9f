/** The paper that the run sheet is printed on. */

export type Paper = 'A4' | 'Letter';

/** Regions whose usual paper is Letter (common practice, no source). */
const LETTER = 'US CA MX PH CL CO VE GT SV NI CR PA PR DO'.split(' ');

/** What is usual where a language tag comes from: "en-US" gives Letter. A tag without a region gives A4. */
export function usualPaper(tag: string): Paper {
  const region = tag.split('-').find((part, i) => i > 0 && /^[A-Z]{2}$/i.test(part));
  return region && LETTER.includes(region.toUpperCase()) ? 'Letter' : 'A4';
}

/** The page has margins, and is this wide and high without them [mm] */
const MARGIN_MM = 10;
export const WIDTH_MM = 190;
export const heightOf = (paper: Paper): number => (paper === 'A4' ? 297 : 279.4) - 2 * MARGIN_MM;

/** The style of the printed page. */
export const pageRule = (paper: Paper): string =>
  `@page { size: ${paper === 'A4' ? 'A4' : 'letter'} portrait; margin: ${MARGIN_MM}mm; }`;
