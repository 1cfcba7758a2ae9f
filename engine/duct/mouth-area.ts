/** Forms of a duct's mouth and the area of each: all of its form that the air model needs. */

/** What a duct says of its mouth's form. */
export interface MouthKeys {
  readonly mouth_width_mm: number;
  readonly mouth_height_mm: number;
  readonly mouth_shape?: 'rectangle' | 'rounded rectangle' | 'round' | 'oval' | 'outline' | undefined;
  readonly mouth_corner_mm?: number | undefined;
  /** Corners of a traced outline, each across and up, in turn either way. */
  readonly mouth_outline_mm?: readonly (readonly [number, number])[] | null | undefined;
}

/** Radius of a rounded rectangle's corners where nothing is said [mm] */
const CORNER_MM = 10;

/**
 * Radius of the corners of a rounded rectangle: at most half its smaller side.
 *
 *     r = min(r, w/2, h/2)
 *
 * @remarks
 * Where the duct says none it is 10 mm (common practice, no source).
 * Source: geometry.
 *
 * @param duct - the mouth's keys
 * @returns radius [mm]
 *
 * @example
 * radiusCorner({ mouth_width_mm: 100, mouth_height_mm: 12 }) // => 6
 */
export function radiusCorner({ mouth_corner_mm, mouth_width_mm, mouth_height_mm }: MouthKeys): number {
  return Math.min(mouth_corner_mm ?? CORNER_MM, mouth_width_mm / 2, mouth_height_mm / 2);
}

/**
 * Full area of a duct's mouth.
 *
 *     w h;   w h − (4 − π) r²;   π w²/4;   π w h/4;   ½ |Σ (x₁ y₂ − x₂ y₁)|
 *
 * @remarks
 * Rectangle, rounded rectangle, round (its height does not count), oval (an ellipse), traced outline.
 * Source: geometry; the last is Green's theorem for a polygon.
 *
 * @param duct - the mouth's keys
 * @returns area [mm²]
 *
 * @example
 * areaMouth({ mouth_width_mm: 100, mouth_height_mm: 100, mouth_shape: 'round' }) // => 7853.98
 */
export function areaMouth(duct: MouthKeys): number {
  const { mouth_width_mm: width, mouth_height_mm: height } = duct;
  switch (duct.mouth_shape) {
    case 'round':
      return (Math.PI / 4) * width ** 2;
    case 'oval':
      return (Math.PI / 4) * width * height;
    case 'rounded rectangle':
      return width * height - (4 - Math.PI) * radiusCorner(duct) ** 2;
    case 'outline':
      return Math.abs(areaPolygon(duct.mouth_outline_mm ?? []));
    default:
      return width * height;
  }
}

/**
 * Area of a polygon.
 *
 *     A = ½ Σ (x₁ y₂ − x₂ y₁)
 *
 * @remarks
 * Below 0 where its corners run clockwise.
 * Source: Green's theorem.
 *
 * @param points - corners in turn, each across and up [mm]
 * @returns area [mm²]
 *
 * @example
 * areaPolygon([[0, 0], [4, 0], [4, 3]]) // => 6
 */
export function areaPolygon(points: readonly (readonly [number, number])[]): number {
  const twice = points.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length]!;
    return sum + x * nextY - nextX * y;
  }, 0);
  return twice / 2;
}
