/** Where panel letters stand under the range: each under its percent, moved only as far as its neighbour's target needs. */
import { edgeOf } from '../charts/mouth-view.ts';
import { spreadLabels } from '../charts/place-labels.ts';

/** Width of a letter's target [px] */
export const LETTER_PX = 24;

export interface LetterPlace {
  /** Where the percent is on the range. */
  at: number;
  /** Middle of the letter. */
  x: number;
  row: number;
}

/** One row where all fit between the range's start and `end_px`, else two rows by turns. */
export function letterPlaces(panels_pct: readonly number[], width_px: number, end_px: number): LetterPlace[] {
  const high = Math.max(width_px, end_px - LETTER_PX / 2);
  const rows = (panels_pct.length - 1) * LETTER_PX <= high ? 1 : 2;
  const places: LetterPlace[] = [];
  for (let row = 0; row < rows; row++) {
    const inRow = panels_pct.map((_, i) => i).filter((i) => i % rows === row);
    const wanted = inRow.map((i) => edgeOf(panels_pct[i] ?? 0, width_px));
    const spread = spreadLabels(wanted, LETTER_PX, 0, high);
    inRow.forEach((i, place) => {
      places[i] = { at: wanted[place] ?? 0, x: spread[place] ?? 0, row };
    });
  }
  return places;
}
