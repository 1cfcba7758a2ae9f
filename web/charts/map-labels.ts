import type { Stop } from '../../engine/index.ts';
import { levelNumber } from '../display/format.ts';
import type { Point } from './columns.ts';
import { isFree, type Box } from './place-labels.ts';
import { textWidth } from './text-width.ts';

export interface MapLabel {
  text: string;
  isHot: boolean;
  /** The leader, from the road to the label. */
  from: Point;
  to: Point;
  /** Middle of the baseline. */
  x: number;
  y: number;
}

interface Size {
  width: number;
  height: number;
}

interface PlacedStop {
  stop: Stop;
  at: Point;
}

const LABELS = 3;
const LINE_PX = 17;
/** Bare road beside a label [px] */
const CLEAR_PX = 6;
/** From the middle of the road to its edge [px] */
const ROAD_PX = 7;
const REACHES_PX = [26, 36, 48, 64, 84];
/** Directions to try, turned from straight outward [rad] */
const TURNS = [0, 0.4, -0.4, 0.8, -0.8, 1.2, -1.2, 1.7, -1.7, 2.3, -2.3, 3.1];

/** The hottest corners by name and value, beside the road where there is room for them. */
export function hottestLabels(
  stops: PlacedStop[],
  road: Point[],
  facePeak_K: number,
  size: Size,
): MapLabel[] {
  const labels: MapLabel[] = [];
  const taken: Box[] = [];
  for (const placed of [...stops].sort((a, b) => b.stop.peakFace_K - a.stop.peakFace_K)) {
    if (labels.length === LABELS) break;
    const text = `${placed.stop.place}, ${levelNumber(placed.stop.peakFace_K)}`;
    const box = freeBox(placed.at, textWidth(text, 14, true) + 4, road, taken, size);
    if (!box) continue;
    taken.push(box);
    labels.push({ ...leader(placed.at, box), text, isHot: placed.stop.peakFace_K > facePeak_K });
  }
  return labels;
}

function freeBox(at: Point, width: number, road: Point[], taken: Box[], size: Size): Box | null {
  const outward = Math.atan2(at.y - size.height / 2, at.x - size.width / 2);
  const boxes = REACHES_PX.flatMap((reach) =>
    TURNS.map((turn): Box => {
      const [dx, dy] = [Math.cos(outward + turn), Math.sin(outward + turn)];
      const x = at.x + dx * reach;
      const left = Math.abs(dx) < 0.4 ? x - width / 2 : dx < 0 ? x - width : x;
      const top = at.y + dy * reach - LINE_PX / 2 - CLEAR_PX;
      return { left, top, width, height: LINE_PX + 2 * CLEAR_PX };
    }),
  );
  const inside = boxes.filter(
    ({ left, top, height }) =>
      left >= 0 && left + width <= size.width && top >= -CLEAR_PX && top + height <= size.height + CLEAR_PX,
  );
  return inside.find((box) => isFree(box, [road], taken) && isClear(leader(at, box), road)) ?? null;
}

/** A leader may touch the road where it starts and nowhere else. */
function isClear({ from, to }: { from: Point; to: Point }, road: Point[]): boolean {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  for (let along = 1.5 * CLEAR_PX; along <= length; along += CLEAR_PX) {
    const x = from.x + ((to.x - from.x) * along) / length;
    const y = from.y + ((to.y - from.y) * along) / length;
    if (road.some((point) => Math.abs(point.x - x) < CLEAR_PX && Math.abs(point.y - y) < CLEAR_PX))
      return false;
  }
  return true;
}

function leader(at: Point, { left, top, width, height }: Box): Pick<MapLabel, 'from' | 'to' | 'x' | 'y'> {
  const middle = top + height / 2;
  const beside = at.x < left - 4 || at.x > left + width + 4;
  const to = beside
    ? { x: at.x < left ? left - 2 : left + width + 2, y: middle }
    : { x: Math.min(left + width - 8, Math.max(left + 8, at.x)), y: middle + Math.sign(at.y - middle) * 9 };
  const length = Math.hypot(to.x - at.x, to.y - at.y) || 1;
  const from = { x: at.x + ((to.x - at.x) * ROAD_PX) / length, y: at.y + ((to.y - at.y) * ROAD_PX) / length };
  return { from, to, x: left + width / 2, y: middle + 5 };
}
