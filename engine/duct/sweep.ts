/** What a straight edge covers as it moves over the mouth from one of its sides. */
import type { MouthSide } from './blank-keys.ts';
import { rootFalling } from './bracketed-root.ts';
import { areaBefore, partsBefore } from './half-plane.ts';
import { corner, type Loop } from './loop.ts';
import type { MouthOutline } from './mouth-outline.ts';
import { shareSegment } from './segment.ts';

export interface Sweep {
  /** From the side where it begins to the one across [mm] */
  readonly across_mm: number;
  /** Area covered by an edge so far from that side [mm²] */
  coveredAt(depth_mm: number): number;
  /** How far from that side an edge covers so much [mm] */
  depthFor(covered_mm2: number): number;
}

/** An inverse is looked for to this share of the way across; a hand lays to a hundredth at best [-] */
const TOLERANCE = 1e-12;

/**
 * What a straight edge covers of an outline, from one of its sides.
 *
 *     rectangle: A d/w;   round and oval: A (acos u − u √(1 − u²))/π, u = 1 − 2 d/w;   else ∮ min(x, d) dy
 *
 * @remarks
 * The inverse is exact for a rectangle, else a bracketed root: more depth never covers less.
 *
 * @param outline - the mouth
 * @param from - the side where the edge begins
 * @returns depth across [mm], area covered at a depth [mm²] and the depth for an area [mm]
 */
export function sweepOf(outline: MouthOutline, from: MouthSide): Sweep {
  const { kind, area_mm2 } = outline;
  const across_mm = from === 'top' || from === 'bottom' ? outline.height_mm : outline.width_mm;
  const within = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));
  const areaAt = lawOf();
  const coveredAt = (depth_mm: number): number => areaAt(within(0, depth_mm, across_mm));
  return { across_mm, coveredAt, depthFor };

  function lawOf(): (depth_mm: number) => number {
    if (kind === 'rectangle') return (depth_mm) => (area_mm2 * depth_mm) / across_mm;
    if (kind === 'round' || kind === 'oval')
      return (depth_mm) => area_mm2 * shareSegment(depth_mm / across_mm);
    const turned = turnedTo(outline.loop, from, outline);
    return (depth_mm) => areaBefore(turned, depth_mm);
  }

  function depthFor(covered_mm2: number): number {
    if (covered_mm2 <= 0) return 0;
    if (covered_mm2 >= area_mm2) return across_mm;
    if (kind === 'rectangle') return (covered_mm2 / area_mm2) * across_mm;
    const bracket = { low: 0, high: across_mm, tolerance: TOLERANCE * across_mm };
    return rootFalling((depth_mm) => covered_mm2 - areaAt(depth_mm), bracket);
  }
}

interface Box {
  readonly width_mm: number;
  readonly height_mm: number;
}

/** The loop turned by quarters so that a side of its box lies where outboard was. */
export function turnedTo(loop: Loop, from: MouthSide, { width_mm, height_mm }: Box): Loop {
  switch (from) {
    case 'outboard':
      return loop;
    case 'inboard':
      return loop.map(({ x_mm, y_mm, bulge }) => corner(width_mm - x_mm, height_mm - y_mm, bulge));
    case 'bottom':
      return loop.map(({ x_mm, y_mm, bulge }) => corner(y_mm, width_mm - x_mm, bulge));
    case 'top':
      return loop.map(({ x_mm, y_mm, bulge }) => corner(height_mm - y_mm, x_mm, bulge));
  }
}

/** And back to where it was. */
export function turnedBack(loop: Loop, from: MouthSide, box: Box): Loop {
  const { width_mm, height_mm } = box;
  switch (from) {
    case 'outboard':
    case 'inboard':
      return turnedTo(loop, from, box);
    case 'bottom':
      return loop.map(({ x_mm, y_mm, bulge }) => corner(width_mm - y_mm, x_mm, bulge));
    case 'top':
      return loop.map(({ x_mm, y_mm, bulge }) => corner(y_mm, height_mm - x_mm, bulge));
  }
}

/** The parts of a turned loop between two upright lines. */
export const partsBetween = (turned: Loop, low_mm: number, high_mm: number): Loop[] =>
  partsBefore(turned, high_mm).flatMap((part) => partsAfter(part, low_mm));

/** The parts of a turned loop that lie behind an upright line. */
export function partsAfter(turned: Loop, at_mm: number): Loop[] {
  const mirrored = turned.map(({ x_mm, y_mm, bulge }) => corner(-x_mm, -y_mm, bulge));
  const parts = partsBefore(mirrored, -at_mm);
  return parts.map((part) => part.map(({ x_mm, y_mm, bulge }) => corner(-x_mm, -y_mm, bulge)));
}
