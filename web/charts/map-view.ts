import type { CornerResult, Lap, StintResult, Track } from '../../engine/index.ts';
import type { Point } from './columns.ts';
import { distanceScale, type DistanceScale } from './distance-scale.ts';
import { hottestLabels, type MapLabel } from './map-labels.ts';

export interface MapPoint extends Point {
  distance_m: number;
}

/** The outline of the circuit laid into a box, north up, with the face temperature at each of its points. */
export interface MapView {
  line: MapPoint[];
  face_K: Float64Array;
  labels: MapLabel[];
}

const SIDE_PX = 14;
const LINE_PX = 17;

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

function outlineIn({ outline }: Track, width: number, height: number): MapPoint[] | null {
  if (!outline || outline.x_m.length < 2) return null;
  const { x_m, y_m, distance_m } = outline;
  const [west, east] = extent(x_m);
  const [south, north] = extent(y_m);
  const side = { x: Math.max(SIDE_PX, width * 0.1), y: SIDE_PX + LINE_PX };
  const scale = Math.min((width - 2 * side.x) / (east - west), (height - 2 * side.y) / (north - south));
  const [left, top] = [(width - (east - west) * scale) / 2, (height - (north - south) * scale) / 2];
  return Array.from(x_m, (x, i) => ({
    x: left + (x - west) * scale,
    y: top + (north - (y_m[i] ?? 0)) * scale,
    distance_m: distance_m[i] ?? 0,
  }));
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
