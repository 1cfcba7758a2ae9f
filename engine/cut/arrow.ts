/**
 * Arrows that say how a plate is held to the car: UP, and OUT to the side of the car that the corner is on. Who stands before a car
 * has its left at the right hand.
 */

import { drawn, line, type Drawing } from './drawing.ts';
import type { Point } from './side.ts';

/** Room for the arrows with their words, beside one another and each alone [mm] */
export const ARROWS = { width_mm: 34, height_mm: 10 };
export const UP_ARROW = { width_mm: 14, height_mm: 10 };
export const OUT_ARROW = { width_mm: 12, height_mm: 7 };

/** Whether OUT points to the left hand of who stands before the car. */
export const isOutLeftOf = (side: 'left' | 'right'): boolean => side === 'right';

/** Both, from the middle of their foot. */
export function arrows(foot: Point, isOutLeft: boolean): Drawing {
  const out_mm = isOutLeft ? -8.5 : 8.5;
  return drawn(
    upArrow(foot, 1, isOutLeft),
    outArrow({ x_mm: foot.x_mm + out_mm, y_mm: foot.y_mm }, isOutLeft, 1),
  );
}

/** Its word stands on the side that the other arrow leaves free. */
export function upArrow({ x_mm: x, y_mm: y }: Point, scale: number, isOutLeft: boolean): Drawing {
  const top = y + 10 * scale;
  const [wide, high] = [1.25 * scale, 2.5 * scale];
  return {
    strokes: [
      line('MARK', [x, y], [x, top]),
      line('MARK', [x - wide, top - high], [x, top], [x + wide, top - high]),
    ],
    letters: [
      {
        text: 'UP',
        at: { x_mm: x + (isOutLeft ? scale : -scale), y_mm: y + scale },
        height_mm: 3 * scale,
        anchor: isOutLeft ? 'start' : 'end',
      },
    ],
  };
}

export function outArrow({ x_mm: x, y_mm: y }: Point, isOutLeft: boolean, scale: number): Drawing {
  const reach = (isOutLeft ? -5.5 : 5.5) * scale;
  const [middle, high] = [y + 1.25 * scale, 1.25 * scale];
  const head = x + reach * 0.55;
  return {
    strokes: [
      line('MARK', [x - reach, middle], [x + reach, middle]),
      line('MARK', [head, middle + high], [x + reach, middle], [head, middle - high]),
    ],
    letters: [
      { text: 'OUT', at: { x_mm: x, y_mm: y + 3.5 * scale }, height_mm: 3 * scale, anchor: 'middle' },
    ],
  };
}
