/**
 * Width of a line of text [px], guessed from the kind of its letters and a little too wide: labels are placed
 * before they are drawn, and the same everywhere.
 */
export function textWidth(text: string, size_px = 14, isBold = false): number {
  let ems = 0;
  for (const letter of text) ems += emOf(letter);
  return ems * size_px * (isBold ? 1.06 : 1);
}

function emOf(letter: string): number {
  if (/[\s\u00a0.,:;'|!il]/.test(letter)) return 0.26;
  if (/[-fjrt()°]/.test(letter)) return 0.36;
  if (/[mwMW%–—+=]/.test(letter)) return 0.82;
  if (/[A-Z]/.test(letter)) return 0.62;
  return 0.52;
}
