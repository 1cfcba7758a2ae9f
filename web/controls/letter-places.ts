/** Where panel letters stand under the range: each under its percent, moved only as far as its neighbour's target needs. */
import { edgeOf } from '../charts/mouth-view.ts';
import { spreadLabels } from '../charts/place-labels.ts';

export interface LetterPlace {
  /** Where the percent is on the range. */
  at: number;
  /** Middle of the letter. */
  x: number;
  row: number;
}

/** One row where all targets fit between the range's start and `end_px`, else as few rows as there is room for, by turns. */
export function letterPlaces(
  panels_pct: readonly number[],
  letter_px: number,
  width_px: number,
  end_px: number,
): LetterPlace[] {
  const high = Math.max(width_px, end_px - letter_px / 2);
  const most = 1 + Math.floor(high / letter_px);
  const rows = Math.ceil(panels_pct.length / most);
  const places: LetterPlace[] = [];
  for (let row = 0; row < rows; row++) {
    const inRow = panels_pct.map((_, i) => i).filter((i) => i % rows === row);
    const wanted = inRow.map((i) => edgeOf(panels_pct[i] ?? 0, width_px));
    const spread = spreadLabels(wanted, letter_px, 0, high);
    inRow.forEach((i, place) => {
      places[i] = { at: wanted[place] ?? 0, x: spread[place] ?? 0, row };
    });
  }
  return places;
}
