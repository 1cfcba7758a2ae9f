/** A perforated blank: equal round holes in staggered rows, clear of the edge. */
import { centreOf, type Place } from './centre.ts';
import { BAR_MM, RIM_MM } from './inset.ts';
import { along, arcOf, circle, sidesOf, type Corner2, type Loop } from './loop.ts';
import type { MouthOutline } from './mouth-outline.ts';

export interface Perforation {
  /** What the holes leave open where they are as near each other as they may be [mm²] */
  readonly most_mm2: number;
  /** The holes that leave so much open, at most the most; a little smaller than asked, so that their number is whole. */
  openingsFor(open_mm2: number): { openings: Loop[]; hole_mm: number };
}

/** Rows are set off by half a pitch, and lie so that all neighbours are one pitch apart (60 degrees). */
const ROW = Math.sqrt(3) / 2;
/** How finely the pitch is looked for [mm] */
const PITCH_STEP_MM = 0.01;

/**
 * Holes in an outline.
 *
 *     A = N π d²/4
 *
 * @remarks
 * The widest pitch that has holes enough is taken, and then the holes are made smaller until the area is exact.
 *
 * @param outline - the mouth
 * @param hole_mm - diameter of the holes, at most [mm]
 * @returns the most that they leave open and the openings for an area
 */
export function perforationOf(outline: MouthOutline, hole_mm: number): Perforation {
  const one_mm2 = (Math.PI / 4) * hole_mm ** 2;
  const room = roomIn(outline, hole_mm / 2 + RIM_MM);
  const closest_mm = hole_mm + BAR_MM;
  const most = room(closest_mm).length;
  const openingsFor = (open_mm2: number): { openings: Loop[]; hole_mm: number } => {
    const needed = Math.min(most, Math.ceil(open_mm2 / one_mm2 - 1e-9));
    let [low, high] = [closest_mm, Math.max(outline.width_mm, outline.height_mm) + closest_mm];
    while (high - low > PITCH_STEP_MM) {
      const middle = (low + high) / 2;
      if (room(middle).length >= needed) low = middle;
      else high = middle;
    }
    const places = room(low);
    const exact_mm = Math.sqrt((4 * open_mm2) / (Math.PI * places.length));
    return { openings: places.map(({ x_mm, y_mm }) => circle(x_mm, y_mm, exact_mm)), hole_mm: exact_mm };
  };
  return { most_mm2: most * one_mm2, openingsFor };
}

/** Where holes of a pitch have their middles: all places of the pattern that are so far inside the outline. */
function roomIn(outline: MouthOutline, clear_mm: number): (pitch_mm: number) => Place[] {
  const { width_mm, height_mm, loop } = outline;
  const centre = centreOf(outline);
  const polygon = flattened(loop);
  const distances = sidesOf(loop).map(([from, to]) => distanceTo(from, to));
  const isInBox = ({ x_mm, y_mm }: Place): boolean =>
    Math.min(x_mm, width_mm - x_mm, y_mm, height_mm - y_mm) >= clear_mm;
  const isClear = (place: Place): boolean =>
    isInBox(place) && isWithin(polygon, place) && distances.every((distance) => distance(place) >= clear_mm);
  return (pitch_mm) => {
    const rows = Math.ceil(height_mm / (ROW * pitch_mm));
    const columns = Math.ceil(width_mm / pitch_mm) + 1;
    const places: Place[] = [];
    for (let row = -rows; row <= rows; row++) {
      const off = row % 2 === 0 ? 0 : 0.5;
      for (let column = -columns; column <= columns; column++) {
        const x_mm = centre.x_mm + (column + off) * pitch_mm;
        const y_mm = centre.y_mm + row * ROW * pitch_mm;
        if (isClear({ x_mm, y_mm })) places.push({ x_mm, y_mm });
      }
    }
    return places;
  };
}

/** Chords of an arc a radian; who is nearer to the edge than their height is not clear of it anyway. */
const CHORDS = 10;

const flattened = (loop: Loop): { x: number; y: number }[] =>
  sidesOf(loop).flatMap(([from, to]) => {
    const chords = Math.max(1, Math.ceil(CHORDS * Math.abs(4 * Math.atan(from.bulge))));
    return Array.from({ length: chords }, (_, i) => along(from, to, i / chords));
  });

/** Even and odd crossings of a ray. */
function isWithin(polygon: readonly { x: number; y: number }[], { x_mm, y_mm }: Place): boolean {
  let isInside = false;
  for (const [i, a] of polygon.entries()) {
    const b = polygon[(i + 1) % polygon.length]!;
    if (a.y > y_mm !== b.y > y_mm && x_mm < a.x + ((y_mm - a.y) / (b.y - a.y)) * (b.x - a.x))
      isInside = !isInside;
  }
  return isInside;
}

/** How far a place is from a side. */
function distanceTo(from: Corner2, to: Corner2): (place: Place) => number {
  if (from.bulge !== 0) return distanceToArc(from, to);
  const [dx, dy] = [to.x_mm - from.x_mm, to.y_mm - from.y_mm];
  const length2 = dx ** 2 + dy ** 2;
  return ({ x_mm, y_mm }) => {
    const share = ((x_mm - from.x_mm) * dx + (y_mm - from.y_mm) * dy) / length2;
    const at = Math.min(1, Math.max(0, share));
    return Math.hypot(x_mm - from.x_mm - at * dx, y_mm - from.y_mm - at * dy);
  };
}

function distanceToArc(from: Corner2, to: Corner2): (place: Place) => number {
  const { x, y, radius, from: start, turn } = arcOf(from, to);
  const round = 2 * Math.PI;
  return ({ x_mm, y_mm }) => {
    const ahead = Math.sign(turn) * (Math.atan2(y_mm - y, x_mm - x) - start);
    const passed = ((ahead % round) + round) % round;
    if (passed <= Math.abs(turn)) return Math.abs(radius - Math.hypot(x_mm - x, y_mm - y));
    return Math.min(
      Math.hypot(x_mm - from.x_mm, y_mm - from.y_mm),
      Math.hypot(x_mm - to.x_mm, y_mm - to.y_mm),
    );
  };
}
