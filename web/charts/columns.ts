export interface Point {
  x: number;
  y: number;
}

/**
 * The polyline of samples first to last. Where several share a pixel column it keeps the first, the lowest, the highest
 * and the last of them in their order: the drawn trace is the same and its length follows the width, not the samples.
 */
export function traceLine(
  first: number,
  last: number,
  xOf: (index: number) => number,
  yOf: (index: number) => number,
  columnWidth_px = 1,
): Point[] {
  const points: Point[] = [];
  let index = first;
  while (index <= last) {
    const column = Math.floor(xOf(index) / columnWidth_px);
    const start = index;
    let low = index;
    let high = index;
    while (index <= last && Math.floor(xOf(index) / columnWidth_px) === column) {
      if (yOf(index) < yOf(low)) low = index;
      if (yOf(index) > yOf(high)) high = index;
      index++;
    }
    const kept = new Set([start, Math.min(low, high), Math.max(low, high), index - 1]);
    for (const each of kept) points.push({ x: xOf(each), y: yOf(each) });
  }
  return points;
}
