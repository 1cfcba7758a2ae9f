/** What can be said of a mouth and its blank, and which numbers each form needs. */
import type { Duct, Problem } from '../../../engine/index.ts';
import { mouthOutline } from '../../../engine/scenario/mouth.ts';

type Shape = NonNullable<Duct['mouth_shape']>;
type Kind = NonNullable<Duct['blank']>;

export const SHAPES: readonly { value: Shape; text: string }[] = [
  { value: 'rectangle', text: 'Rectangle' },
  { value: 'rounded rectangle', text: 'Rectangle with round corners' },
  { value: 'round', text: 'Round' },
  { value: 'oval', text: 'Oval' },
  { value: 'outline', text: 'Traced outline' },
];

export const KINDS: readonly { value: Kind; text: string }[] = [
  { value: 'edge', text: 'Straight edge' },
  { value: 'hole', text: 'Hole in the middle' },
  { value: 'slots', text: 'Slots' },
  { value: 'perforated', text: 'Perforated' },
];

export const FROM: readonly { value: NonNullable<Duct['blank_from']>; text: string }[] = [
  { value: 'outboard', text: 'Outboard' },
  { value: 'inboard', text: 'Inboard' },
  { value: 'top', text: 'Top' },
  { value: 'bottom', text: 'Bottom' },
];

/** Keys of the duct whose numbers matter for its mouth and blank as they are. */
export function numberKeys({ mouth_shape = 'rectangle', blank = 'edge' }: Duct): (keyof Duct)[] {
  return [
    ...(mouth_shape === 'outline' ? [] : (['mouth_width_mm'] as const)),
    ...(mouth_shape === 'outline' || mouth_shape === 'round' ? [] : (['mouth_height_mm'] as const)),
    ...(mouth_shape === 'rounded rectangle' ? (['mouth_corner_mm'] as const) : []),
    ...(blank === 'slots' ? (['blank_slots'] as const) : []),
    ...(blank === 'perforated' ? (['blank_hole_mm'] as const) : []),
  ];
}

/** What holds where a file says nothing. */
export const UNSAID: Partial<Record<keyof Duct, number>> = {
  mouth_corner_mm: 10,
  blank_slots: 4,
  blank_hole_mm: 8,
};

/** Whether the blank is told from which side: a hole in the middle and a perforated plate have none. */
export const hasSide = ({ blank = 'edge' }: Duct): boolean => blank === 'edge' || blank === 'slots';

/** The mouth's box as the first outline to be changed. */
export function firstOutline(duct: Duct): [number, number][] {
  const { width_mm, height_mm } = mouthOutline(duct);
  return [
    [0, 0],
    [width_mm, 0],
    [width_mm, height_mm],
    [0, height_mm],
  ];
}

export const outlineText = (corners: readonly (readonly [number, number])[]): string =>
  corners.map(([x, y]) => `${x} ${y}`).join('\n');

/** Corners one a line, across and up; or the first line that is none. */
export function typedOutline(text: string): { corners: [number, number][] } | { wrong: string } {
  const lines = text
    .split('\n')
    .map((line) => line.trim())
    .filter(Boolean);
  const corners: [number, number][] = [];
  for (const [i, line] of lines.entries()) {
    const numbers = line.split(/[;\s]+/).map((part) => Number(part.replace(',', '.')));
    const [x, y] = numbers;
    if (numbers.length !== 2 || x === undefined || y === undefined || !numbers.every(Number.isFinite))
      return { wrong: `Corner ${i + 1}: expected two numbers, across and up, got “${line.slice(0, 24)}”.` };
    corners.push([x, y]);
  }
  return { corners };
}

/** What is wrong with an outline that was understood; corners are counted from 1 as they stand in their field. */
export function outlineWords({ key, expected, value }: Problem): string {
  const counted = expected.replace(/corner (\d+)/, (_, from0) => `corner ${Number(from0) + 1}`);
  const corner = /outline_mm\.(\d+)/.exec(key)?.[1];
  return corner === undefined
    ? `Expected ${counted}.`
    : `Corner ${Number(corner) + 1}: expected ${counted}, got ${value}.`;
}
