import type { Point } from './columns.ts';

export interface Box {
  left: number;
  top: number;
  width: number;
  height: number;
}

/** Moves labels of one column apart: none overlaps, none leaves low to high, each stays near where it belongs. */
export function spreadLabels(wanted: number[], gap: number, low: number, high: number): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
  const groups: { sum: number; count: number }[] = [];
  for (const [place, index] of order.entries()) {
    // Each label measured from where it would be in an unbroken stack: labels that touch share one mean.
    groups.push({ sum: (wanted[index] ?? 0) - place * gap, count: 1 });
    for (let last = groups.at(-1), before = groups.at(-2); last && before;) {
      if (before.sum / before.count <= last.sum / last.count) break;
      before.sum += last.sum;
      before.count += last.count;
      groups.pop();
      last = groups.at(-1);
      before = groups.at(-2);
    }
  }
  const lastBase = high - (wanted.length - 1) * gap;
  const bases = groups.flatMap(({ sum, count }) =>
    new Array<number>(count).fill(Math.max(low, Math.min(lastBase, sum / count))),
  );
  const placed = new Array<number>(wanted.length);
  order.forEach((index, place) => (placed[index] = (bases[place] ?? low) + place * gap));
  return placed;
}

/** The labels of one line, most important first, that fit without touching; the others are left out. */
export function keepApart<T extends { x: number; width: number }>(labels: T[], gap: number): T[] {
  const kept: T[] = [];
  for (const label of labels) {
    const isFree = kept.every(
      (other) => Math.abs(other.x - label.x) >= (other.width + label.width) / 2 + gap,
    );
    if (isFree) kept.push(label);
  }
  return kept;
}

/** The first box that lies clear of every line and every other box. */
export function firstFree(candidates: Box[], lines: Point[][], boxes: Box[] = []): Box | null {
  return candidates.find((box) => isFree(box, lines, boxes)) ?? null;
}

export const isFree = (box: Box, lines: Point[][], boxes: Box[]): boolean =>
  !boxes.some((other) => overlaps(box, other)) && !lines.some((line) => crosses(box, line));

export function overlaps(a: Box, b: Box): boolean {
  return (
    a.left < b.left + b.width &&
    b.left < a.left + a.width &&
    a.top < b.top + b.height &&
    b.top < a.top + a.height
  );
}

function crosses(box: Box, line: Point[]): boolean {
  return line.some((to, i) => {
    const from = line[i - 1] ?? to;
    return segmentMeets(box, from, to);
  });
}

/** Whether all of the segment lies on one side of the box: so does nearly all of a line, and it is quickly told. */
const isBeside = ({ left, top, width, height }: Box, from: Point, to: Point): boolean =>
  (from.x < left && to.x < left) ||
  (from.x > left + width && to.x > left + width) ||
  (from.y < top && to.y < top) ||
  (from.y > top + height && to.y > top + height);

/** Clips the segment against the box's four sides (Liang and Barsky). */
function segmentMeets(box: Box, from: Point, to: Point): boolean {
  if (isBeside(box, from, to)) return false;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  let enter = 0;
  let leave = 1;
  const sides: [slope: number, room: number][] = [
    [-dx, from.x - box.left],
    [dx, box.left + box.width - from.x],
    [-dy, from.y - box.top],
    [dy, box.top + box.height - from.y],
  ];
  for (const [slope, room] of sides) {
    if (slope === 0) {
      if (room < 0) return false;
    } else if (slope < 0) enter = Math.max(enter, room / slope);
    else leave = Math.min(leave, room / slope);
  }
  return enter <= leave;
}
