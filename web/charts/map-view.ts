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

export function mapView(
  result: StintResult,
  corner: CornerResult,
  lap: Lap,
  width: number,
  height: number,
): MapView | null {
  const line = outlineIn(result.track, width, height);
  if (!line) return null;
  const along = distanceScale(result.clock, lap, result.track.length_m, [0, result.track.length_m]);
  const stops = corner.stops
    .filter((stop) => stop.lap === lap.lap)
    .map((stop) => ({ stop, at: placeAt(line, along.distanceOf(stop.end_s)) }));
  return {
    line,
    face_K: faceAlong(corner, lap, line, along),
    labels: hottestLabels(stops, line, corner.window.facePeak_K, { width, height }),
  };
}

/** Turned so that the circuit fills its box best: an outline that starts at a line has no north. */
function outlineIn({ outline }: Track, width: number, height: number): MapPoint[] | null {
  if (!outline || outline.x_m.length < 2) return null;
  const room = { x: width - 2 * Math.max(SIDE_PX, width * 0.1), y: height - 2 * (SIDE_PX + 8) };
  const turns = Array.from({ length: TURNS }, (_, i) => turned(outline, (i * Math.PI) / TURNS, room));
  const { x, y, scale } = turns.reduce((best, each) => (each.scale > best.scale * 1.02 ? each : best));
  const [west, east] = extent(x);
  const [north, south] = extent(y);
  const [left, top] = [(width - (east - west) * scale) / 2, (height - (south - north) * scale) / 2];
  return Array.from(outline.distance_m, (distance_m, i) => ({
    x: left + ((x[i] ?? 0) - west) * scale,
    y: top + ((y[i] ?? 0) - north) * scale,
    distance_m,
  }));
}

/** Coordinates with y downward, and the scale at which they fit the room. */
function turned(
  { x_m, y_m }: NonNullable<Track['outline']>,
  turn: number,
  room: Point,
): { x: Float64Array; y: Float64Array; scale: number } {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const x = x_m.map((each, i) => each * cos - (y_m[i] ?? 0) * sin);
  const y = x_m.map((each, i) => -each * sin - (y_m[i] ?? 0) * cos);
  const [[west, east], [north, south]] = [extent(x), extent(y)];
  return { x, y, scale: Math.min(room.x / (east - west), room.y / (south - north)) };
}

function extent(values: Float64Array): [number, number] {
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

/** Where the car is on the outline at a moment of this lap. */
export function placeAt(line: MapPoint[], distance_m: number): Point {
  const next = line.findIndex((point) => point.distance_m >= distance_m);
  const to = line[next < 0 ? line.length - 1 : next];
  const from = line[Math.max(0, (next < 0 ? line.length : next) - 1)];
  if (!from || !to) return { x: 0, y: 0 };
  const share = (distance_m - from.distance_m) / (to.distance_m - from.distance_m || 1);
  return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
}
