/** What is drawn, whatever writes it: paths on layers and lettering, in mm, y upwards. */

import type { Loop } from '../duct/loop.ts';
import { mirroredLoop, movedLoop, polygonLoop, turnedLoop, turnedPoint } from './path.ts';
import type { Point } from './side.ts';

/** Layers of lines. Lettering has one of its own, TEXT. */
export type Layer = 'CUT' | 'MARK' | 'RULER';

export interface Stroke {
  layer: Layer;
  path: Loop;
  isClosed: boolean;
}

export interface Lettering {
  text: string;
  /** On the base line. */
  at: Point;
  /** Of capitals. */
  height_mm: number;
  anchor: 'start' | 'middle' | 'end';
  /** Read from the right-hand side: the drawing was turned by a quarter to the left. */
  isTurned?: boolean;
}

export interface Drawing {
  strokes: readonly Stroke[];
  letters: readonly Lettering[];
}

/** Width over height of capitals: of capitals and digits, of others; for wide fonts as well [-] */
const WIDE = 1;
const NARROW = 0.8;

export const drawn = (...drawings: readonly Partial<Drawing>[]): Drawing => ({
  strokes: drawings.flatMap(({ strokes }) => strokes ?? []),
  letters: drawings.flatMap(({ letters }) => letters ?? []),
});

export const moved = ({ strokes, letters }: Drawing, by: Point): Drawing => ({
  strokes: strokes.map((stroke) => ({ ...stroke, path: movedLoop(stroke.path, by) })),
  letters: letters.map((letter) => ({
    ...letter,
    at: { x_mm: letter.at.x_mm + by.x_mm, y_mm: letter.at.y_mm + by.y_mm },
  })),
});

/** By a quarter to the left, lettering too. What is upright before it is turned once. */
export const turned = ({ strokes, letters }: Drawing): Drawing => ({
  strokes: strokes.map((stroke) => ({ ...stroke, path: turnedLoop(stroke.path) })),
  letters: letters.map((letter) => ({ ...letter, at: turnedPoint(letter.at), isTurned: true })),
});

/** Left and right exchanged; lettering keeps its way of reading. */
export const mirrored = ({ strokes, letters }: Drawing): Drawing => ({
  strokes: strokes.map((stroke) => ({ ...stroke, path: mirroredLoop(stroke.path) })),
  letters: letters.map((letter) => ({ ...letter, at: { x_mm: 0 - letter.at.x_mm, y_mm: letter.at.y_mm } })),
});

export const line = (
  layer: Layer,
  ...points: readonly (readonly [x_mm: number, y_mm: number])[]
): Stroke => ({
  layer,
  path: polygonLoop(points.map(([x_mm, y_mm]) => ({ x_mm, y_mm }))),
  isClosed: false,
});

export const closed = (layer: Layer, path: Loop): Stroke => ({ layer, path, isClosed: true });

/** Width that a text takes at most [mm] */
export const textWidth_mm = (text: string, height_mm: number): number =>
  [...text].reduce((sum, c) => sum + (/[A-Z0-9%]/.test(c) ? WIDE : NARROW), 0) * height_mm;

/** The height at which a text fits a width, at most the one wanted [mm] */
export const fittingHeight_mm = (text: string, width_mm: number, wanted_mm: number): number =>
  Math.min(wanted_mm, width_mm / textWidth_mm(text, 1));
