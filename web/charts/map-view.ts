import type { CornerResult, Lap, StintResult, Stop, Track } from '../../engine/index.ts';
import { levelNumber } from '../display/format.ts';
import type { Point } from './columns.ts';
import { distanceScale } from './distance-scale.ts';
import { firstFree, type Box } from './place-labels.ts';
import { textWidth } from './text-width.ts';

export interface MapPoint extends Point {
  distance_m: number;
}

/** The outline of the circuit laid into a box, north up, with the face temperature at each of its points. */
export interface MapView {
  line: MapPoint[];
  face_K: Float64Array;
  labels: MapLabel[];
}

export interface MapLabel {
  text: string;
  isHot: boolean;
  from: Point;
  to: Point;
  x: number;
  y: number;
}

const SIDE_PX = 14;
const LABELS = 3;
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
  return {
    line,
    face_K: faceAlong(result, corner, lap, line),
    labels: hottest(line, corner, lap, width, height),
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
function faceAlong(
  { clock, track }: StintResult,
  corner: CornerResult,
  lap: Lap,
  line: MapPoint[],
): Float64Array {
  const face = corner.columns?.face_K;
  const along = distanceScale(clock, lap, track.length_m, [0, track.length_m]);
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

/** The hottest corners by name and value, outside the line where there is room. */
function hottest(
  line: MapPoint[],
  corner: CornerResult,
  lap: Lap,
  width: number,
  height: number,
): MapLabel[] {
  const stops = corner.stops
    .filter((stop) => stop.lap === lap.lap)
    .sort((a, b) => b.peakFace_K - a.peakFace_K);
  const labels: MapLabel[] = [];
  const boxes: Box[] = [];
  const middle = { x: width / 2, y: height / 2 };
  for (const stop of stops) {
    if (labels.length === LABELS) break;
    const label = labelOf(stop, corner, line, middle, boxes, { width, height });
    if (label) labels.push(label);
  }
  return labels;
}

function labelOf(
  stop: Stop,
  corner: CornerResult,
  line: MapPoint[],
  middle: Point,
  boxes: Box[],
  size: { width: number; height: number },
): MapLabel | null {
  const at = placeAt(line, stop.distance_m + 60);
  const text = `${stop.place}, ${levelNumber(stop.peakFace_K)}`;
  const width = textWidth(text, 14, true) + 4;
  const outward = Math.atan2(at.y - middle.y, at.x - middle.x);
  const turns = [0, 0.4, -0.4, 0.8, -0.8, 1.2, -1.2, 1.7, -1.7, 2.3, -2.3, Math.PI];
  const candidates = [26, 38, 54, 72].flatMap((reach) =>
    turns.map((turn): Box => {
      const [dx, dy] = [Math.cos(outward + turn), Math.sin(outward + turn)];
      const x = at.x + dx * reach;
      const left = Math.abs(dx) < 0.4 ? x - width / 2 : dx < 0 ? x - width : x;
      return { left, top: at.y + dy * reach - LINE_PX / 2, width, height: LINE_PX };
    }),
  );
  const inside = candidates.filter(
    (box) =>
      box.left >= 0 && box.left + width <= size.width && box.top >= 0 && box.top + LINE_PX <= size.height,
  );
  const wide = inside.map((box) => ({ ...box, top: box.top - 5, height: box.height + 10 }));
  const box = firstFree(wide, [line], boxes);
  if (!box) return null;
  boxes.push(box);
  const y = box.top + box.height / 2;
  return {
    text,
    isHot: stop.peakFace_K > corner.window.facePeak_K,
    from: at,
    to: { x: Math.min(box.left + width, Math.max(box.left, at.x)), y: y + Math.sign(at.y - y) * 8 },
    x: box.left + width / 2,
    y: y + 5,
  };
}
