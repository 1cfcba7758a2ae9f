import type { Point } from './columns.ts';
import { firstFree, type Box } from './place-labels.ts';
import { textWidth } from './text-width.ts';
import type { Word } from './word.ts';

/** Height that a line of lettering takes [px] */
export const LINE_PX = 17;

export interface Lettering {
  words: Word[];
  /** Sets a word in the first of the places, given by its middle, where it touches nothing; else leaves it out. */
  add(text: string, tone: Word['tone'], places: Point[]): void;
}

/** Words inside a frame, clear of its lines, of each other and of the boxes already taken. */
export function lettering(frame: Box, lines: Point[][], taken: Box[] = []): Lettering {
  const words: Word[] = [];
  const boxes = [...taken];
  return {
    words,
    add(text, tone, places) {
      const width = textWidth(text, 14, tone !== 'ink') + 4;
      const candidates = places
        .map(({ x, y }) => ({ left: x - width / 2, top: y - LINE_PX / 2, width, height: LINE_PX }))
        .filter((box) => isWithin(frame, box));
      const box = firstFree(candidates, lines, boxes);
      if (!box) return;
      boxes.push(box);
      words.push({ text, tone, x: box.left + width / 2, y: box.top + 13, anchor: 'middle' });
    },
  };
}

function isWithin(frame: Box, { left, top, width, height }: Box): boolean {
  return (
    left >= frame.left + 2 &&
    left + width <= frame.left + frame.width - 2 &&
    top >= frame.top &&
    top + height <= frame.top + frame.height
  );
}

/** Places over an area from its left, its middle height first, then nearer its edges. */
export function placesIn({ left, width }: Box, top: number, foot: number): Point[] {
  const places: Point[] = [];
  for (const share of [0.5, 0.3, 0.7]) {
    for (let x = left + 34; x < left + width; x += 8) places.push({ x, y: top + (foot - top) * share });
  }
  return places;
}
