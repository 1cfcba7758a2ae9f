/** A column of a file as a small line: gaps stay gaps. Pure. */

/** The view box of every thumbnail; it is stretched to where it stands. */
export const THUMBNAIL = { width: 96, height: 40 };

/** What the line keeps clear of above and below, so that its own width is not cut. */
const INSET = 3;

/** Path of the values from low at the bottom to high at the top; a value alone between gaps is a dot. */
export function thumbnailPath(values: Float64Array, low: number, high: number): string {
  const room = THUMBNAIL.height - 2 * INSET;
  const xOf = (i: number): number => (i / Math.max(1, values.length - 1)) * THUMBNAIL.width;
  const yOf = (value: number): number =>
    high > low ? INSET + room * (1 - (value - low) / (high - low)) : THUMBNAIL.height / 2;
  const isThere = (i: number): boolean => Number.isFinite(values[i]);
  let path = '';
  for (let i = 0; i < values.length; i++) {
    if (!isThere(i)) continue;
    const isAlone = !isThere(i - 1) && !isThere(i + 1);
    path += `${isThere(i - 1) ? 'L' : 'M'}${xOf(i).toFixed(1)} ${yOf(values[i] ?? 0).toFixed(1)}`;
    if (isAlone) path += 'h0.1';
  }
  return path;
}
