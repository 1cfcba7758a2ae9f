/** The outline of a duct's mouth, seen from the front of the car on its right corner: across from outboard to inboard, and up. */
import { corner, QUARTER, type Loop } from './loop.ts';
import { areaMouth, areaPolygon, radiusCorner, type MouthKeys } from './mouth-area.ts';
import { ovalLoop } from './oval.ts';

export type { Loop } from './loop.ts';

export interface MouthOutline {
  readonly kind: NonNullable<MouthKeys['mouth_shape']>;
  /** Counter-clockwise; its box begins at (0, 0). */
  readonly loop: Loop;
  readonly area_mm2: number;
  readonly width_mm: number;
  readonly height_mm: number;
}

/**
 * Outline of a duct's mouth.
 *
 * @remarks
 * Exact but for an oval, whose loop is of arcs within 0.005 mm of the ellipse; its area is the ellipse's.
 *
 * @param duct - the mouth's keys, checked
 * @returns its kind, closed path, area [mm²] and the sides of its box [mm]
 */
export function mouthOutline(duct: MouthKeys): MouthOutline {
  const kind = duct.mouth_shape ?? 'rectangle';
  const points = kind === 'outline' ? (duct.mouth_outline_mm ?? []) : [];
  const [width_mm, height_mm] = sizeMouth(duct);
  const size = { kind, area_mm2: areaMouth(duct), width_mm, height_mm };
  switch (kind) {
    case 'round':
    case 'oval':
      return { ...size, loop: kind === 'round' ? roundedLoop(size, width_mm / 2) : ovalLoop(size) };
    case 'rounded rectangle':
      return { ...size, loop: roundedLoop(size, radiusCorner(duct)) };
    case 'outline':
      return { ...size, loop: tracedLoop(points) };
    default:
      return { ...size, loop: roundedLoop(size, 0) };
  }
}

type Points = readonly (readonly [number, number])[];

const across = (points: Points): number[] => points.map(([x]) => x);
const upward = (points: Points): number[] => points.map(([, y]) => y);

/** How wide and how high a mouth truly is: a round one is as high as wide, a traced one as its corners are apart [mm] */
export function sizeMouth(duct: MouthKeys): [width_mm: number, height_mm: number] {
  const { mouth_shape, mouth_outline_mm, mouth_width_mm, mouth_height_mm } = duct;
  const extent = (values: number[]): number => Math.max(...values) - Math.min(...values);
  if (mouth_shape === 'outline' && mouth_outline_mm)
    return [extent(across(mouth_outline_mm)), extent(upward(mouth_outline_mm))];
  return [mouth_width_mm, mouth_shape === 'round' ? mouth_width_mm : mouth_height_mm];
}

/** A box with round corners; a circle where they meet, a rectangle where they have no radius. */
function roundedLoop(
  { width_mm: w, height_mm: h }: { width_mm: number; height_mm: number },
  r: number,
): Loop {
  if (r === 0) return [corner(0, 0), corner(w, 0), corner(w, h), corner(0, h)];
  const all = [
    [corner(r, 0), corner(w - r, 0, QUARTER)],
    [corner(w, r), corner(w, h - r, QUARTER)],
    [corner(w - r, h), corner(r, h, QUARTER)],
    [corner(0, h - r), corner(0, r, QUARTER)],
  ] as const;
  // a side that is no longer than nothing is left out
  return all.flatMap(([start, end]) =>
    Math.hypot(end.x_mm - start.x_mm, end.y_mm - start.y_mm) < 1e-9 ? [end] : [start, end],
  );
}

/** Turned counter-clockwise and moved to its own box. */
function tracedLoop(points: Points): Loop {
  const [left, low] = [Math.min(...across(points)), Math.min(...upward(points))];
  const loop = points.map(([x, y]) => corner(x - left, y - low));
  return areaPolygon(points) < 0 ? loop.reverse() : loop;
}
