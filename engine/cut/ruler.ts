/** Two rulers of 100 mm at right angles: what says whether a sheet came out of the printer true. */

import { RULER_MM } from './correction.ts';
import { line, type Drawing, type Stroke } from './drawing.ts';
import type { Point } from './side.ts';

export const MEASURE_WORDS = 'Measure both before cutting. Not 100 mm? Do not cut.';

/** Length of the marks at both ends, at every ten millimetres, and at every fifth of these [mm] */
const TICK_MM = { end: 5, fifth: 4, other: 2.5 };

/** From the corner that both begin in, to the right and upwards; the marks point away from what lies between them. */
export function rulers({ x_mm: x, y_mm: y }: Point): Drawing {
  const across = ticks().map(({ at, long }): Stroke => line('RULER', [x + at, y], [x + at, y - long]));
  const up = ticks().map(({ at, long }): Stroke => line('RULER', [x, y + at], [x - long, y + at]));
  return {
    strokes: [line('RULER', [x, y + RULER_MM], [x, y], [x + RULER_MM, y]), ...across, ...up],
    letters: [
      {
        text: `${RULER_MM} mm, across and up`,
        at: { x_mm: x + 3, y_mm: y - 7.5 },
        height_mm: 2.5,
        anchor: 'start',
      },
    ],
  };
}

function ticks(): { at: number; long: number }[] {
  return Array.from({ length: 11 }, (_, ten) => ({
    at: (ten * RULER_MM) / 10,
    long: ten % 10 === 0 ? TICK_MM.end : ten === 5 ? TICK_MM.fifth : TICK_MM.other,
  }));
}
