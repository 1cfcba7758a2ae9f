/** An ellipse as a chain of arcs. */
import { along, circle, corner, type Corner2, type Loop } from './loop.ts';

/** No arc lies farther from the ellipse; a cutter's own width varies by more [mm] */
const TOLERANCE_MM = 0.005;
const MOST_ARCS_A_QUARTER = 256;

interface Size {
  width_mm: number;
  height_mm: number;
}

/**
 * An ellipse in its box, as arcs through points of it.
 *
 * @remarks
 * Each arc passes through three places of the ellipse; there are as many as keep every arc within 0.005 mm.
 *
 * @param size - sides of the box [mm]
 * @returns counter-clockwise loop, starting at the inboard end
 */
export function ovalLoop({ width_mm, height_mm }: Size): Loop {
  const [a, b] = [width_mm / 2, height_mm / 2];
  if (a === b) return circle(a, b, width_mm);
  let arcs = 2;
  let loop = chain({ width_mm, height_mm }, arcs);
  while (arcs < MOST_ARCS_A_QUARTER && farthest(loop, a, b, arcs) > TOLERANCE_MM) {
    arcs *= 2;
    loop = chain({ width_mm, height_mm }, arcs);
  }
  return loop;
}

const place = ({ width_mm, height_mm }: Size, t: number): { x: number; y: number } => ({
  x: (width_mm / 2) * (1 + Math.cos(t)),
  y: (height_mm / 2) * (1 + Math.sin(t)),
});

/** Arcs over equal steps of the ellipse's parameter. */
function chain(size: Size, arcsAQuarter: number): Corner2[] {
  const step = Math.PI / 2 / arcsAQuarter;
  return Array.from({ length: 4 * arcsAQuarter }, (_, i) => {
    const [start, middle, end] = [i, i + 0.5, i + 1].map((k) => place(size, k * step));
    const [dx, dy] = [end!.x - start!.x, end!.y - start!.y];
    const chord = Math.hypot(dx, dy);
    // the middle's height over the chord, and how far it is from the chord's middle, give the circle through all three
    const [mx, my] = [middle!.x - (start!.x + end!.x) / 2, middle!.y - (start!.y + end!.y) / 2];
    const rise = (mx * dy - my * dx) / chord;
    const aside = (mx * dx + my * dy) / chord;
    const toCentre = (chord ** 2 / 4 - aside ** 2 - rise ** 2) / (2 * rise);
    const radius = Math.hypot(chord / 2, toCentre);
    return corner(start!.x, start!.y, (2 * (radius - toCentre)) / chord);
  });
}

/** How far the arcs of a quarter go from the ellipse at most, looked at between the points they share with it. */
function farthest(loop: readonly Corner2[], a: number, b: number, arcsAQuarter: number): number {
  const looked = loop.slice(0, arcsAQuarter).flatMap((from, i) => {
    const to = loop[i + 1]!;
    return [0.25, 0.75].map((share) => offEllipse(along(from, to, share), a, b));
  });
  return Math.max(...looked);
}

function offEllipse({ x, y }: { x: number; y: number }, a: number, b: number): number {
  const [u, v] = [(x - a) / a, (y - b) / b];
  return Math.abs(u ** 2 + v ** 2 - 1) / (2 * Math.hypot(u / a, v / b));
}
