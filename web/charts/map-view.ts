import type { CornerResult, Lap, StintResult, Track } from '../../engine/index.ts';
import type { Point } from './columns.ts';
import { distanceScale, type DistanceScale } from './distance-scale.ts';
import { hottestLabels, type MapLabel } from './map-labels.ts';

export interface MapPoint extends Point {
  distance_m: number;
}

/** The outline of the circuit laid into a box, with the face temperature at each of its points. */
export interface MapView {
  line: MapPoint[];
  face_K: Float64Array;
  labels: MapLabel[];
}

const SIDE_PX = 14;
/** Orientations tried over half a turn. */
const TURNS = 12;
const SKETCH_POINTS = 130;

export function mapView(
  result: StintResult,
  corner: CornerResult,
  lap: Lap,
  { line, width, height }: { line: MapPoint[]; width: number; height: number },
): MapView {
  const along = distanceScale(result.clock, lap, result.track.length_m, [0, result.track.length_m]);
  const stops = corner.stops
    .filter((stop) => stop.lap === lap.lap)
    .map((stop) => ({ stop, at: placeAt(line, along.distanceOf(stop.end_s)) }));
  return {
    line,
    face_K: faceAlong(corner, lap, line, along),
    labels: hottestLabels(stops, thinned(line), corner.window.facePeak_K, { width, height }),
  };
}

/** Turned so that the circuit fills its box best: an outline that starts at a line has no north. */
export function outlineIn({ outline }: Track, width: number, height: number): MapPoint[] | null {
  if (!outline || outline.x_m.length < 2) return null;
  const room = { x: width - 2 * Math.max(SIDE_PX, width * 0.1), y: height - 2 * (SIDE_PX + 8) };
  const sketch = thinned(Array.from(outline.x_m, (x, i) => ({ x, y: outline.y_m[i] ?? 0 })));
  const fits = Array.from({ length: TURNS }, (_, i) => fitOf(sketch, (i * Math.PI) / TURNS, room));
  const fit = fits.reduce((best, each) => (each.scale > best.scale * 1.02 ? each : best));
  return Array.from(outline.distance_m, (distance_m, i) => {
    const { x, y } = turned({ x: outline.x_m[i] ?? 0, y: outline.y_m[i] ?? 0 }, fit.turn);
    return {
      x: width / 2 + (x - fit.middle.x) * fit.scale,
      y: height / 2 + (y - fit.middle.y) * fit.scale,
      distance_m,
    };
  });
}

/** Few enough points to try many things with, near enough for lettering. */
function thinned<T>(line: T[]): T[] {
  const step = Math.max(1, Math.floor(line.length / SKETCH_POINTS));
  return line.filter((_, i) => i % step === 0);
}

/** y goes up on the ground and down on the screen. */
const turned = ({ x, y }: Point, turn: number): Point => ({
  x: x * Math.cos(turn) - y * Math.sin(turn),
  y: -x * Math.sin(turn) - y * Math.cos(turn),
});

interface Fit {
  turn: number;
  scale: number;
  middle: Point;
}

function fitOf(sketch: Point[], turn: number, room: Point): Fit {
  const points = sketch.map((point) => turned(point, turn));
  const [west, east] = extent(points.map(({ x }) => x));
  const [north, south] = extent(points.map(({ y }) => y));
  return {
    turn,
    scale: Math.min(room.x / (east - west), room.y / (south - north)),
    middle: { x: (west + east) / 2, y: (north + south) / 2 },
  };
}

function extent(values: number[]): [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return [low, high];
}

/** One walk along samples and outline together. */
function faceAlong(corner: CornerResult, lap: Lap, line: MapPoint[], along: DistanceScale): Float64Array {
  const face = corner.columns?.face_K;
  let index = lap.firstSample;
  return Float64Array.from(line, ({ distance_m }) => {
    while (index < lap.lastSample && along.xOfSample(index + 1) <= distance_m) index++;
    return face?.[index] ?? 0;
  });
}

/** How far from the road a hand may be that means it [px] */
const REACH_PX = 30;

/** Distance from the line of the point of the road nearest to a place on the drawing; null where none is near. */
export function distanceNear(line: MapPoint[], { x, y }: Point): number | null {
  const away = (point: MapPoint): number => Math.hypot(point.x - x, point.y - y);
  let nearest: MapPoint | null = null;
  for (const each of line) if (!nearest || away(each) < away(nearest)) nearest = each;
  return nearest && away(nearest) <= REACH_PX ? nearest.distance_m : null;
}

/** Where the car is on the outline at a moment of this lap. */
export function placeAt(line: MapPoint[], distance_m: number): Point {
  const next = line.findIndex((point) => point.distance_m >= distance_m);
  const to = line[next < 0 ? line.length - 1 : next];
  const from = line[Math.max(0, (next < 0 ? line.length : next) - 1)];
  if (!from || !to) return { x: 0, y: 0 };
  const share = (distance_m - from.distance_m) / (to.distance_m - from.distance_m || 1);
  return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
}
