/** Where everything of the map of all blankings lies: laps across as on the stint's chart, blanking up. */
import type { BlankingMap, StintResult } from '../../engine/index.ts';
import type { Area, BlankingAreas } from './blanking-field.ts';
import type { Point } from './columns.ts';
import { lapFrame, lapScale, type LapScale } from './lap-scale.ts';
import type { Box } from './place-labels.ts';
import { valueScale, type ValueScale } from './value-scale.ts';

export interface BlankingView {
  frame: Box;
  x: LapScale;
  /** From percent of the mouth. */
  y: ValueScale;
  map: BlankingMap;
  inside: Point[][];
  tooHot: Point[][];
  tooCold: Point[][];
  /** The edge of what is inside, without the stretches that lie on the frame. */
  contour: Point[][];
  columns: HeatColumn[];
  /** Laps that do not count, joined where they follow each other. */
  pale: { left: number; right: number }[];
}

/** The face peak of one lap, from open to closed. */
export interface HeatColumn {
  left: number;
  right: number;
  shades: { share: number; face_K: number }[];
}

export const MAP_TOP_PX = 24;

export function blankingView(
  map: BlankingMap,
  areas: BlankingAreas,
  { laps, clock }: Pick<StintResult, 'laps' | 'clock'>,
  width: number,
  plotHeight: number,
): BlankingView {
  const x = lapScale(laps, clock.time_s.at(-1) ?? 0, lapFrame(width));
  const right = x.laps.at(-1)?.right ?? x.right;
  const frame = { left: x.left, top: MAP_TOP_PX, width: right - x.left, height: plotHeight };
  const y = valueScale(0, 100, frame.top + plotHeight, frame.top);
  const drawn = (area: Area): Point[][] =>
    area.map((ring) => ring.map(({ lap, pct }) => ({ x: lapX(x, frame, lap), y: y.of(pct) })));
  const inside = drawn(areas.inside);
  return {
    frame,
    x,
    y,
    map,
    inside,
    tooHot: drawn(areas.tooHot),
    tooCold: drawn(areas.tooCold),
    contour: inside.flatMap((ring) => linesWithin(ring, frame)),
    columns: x.laps.map(({ left, right }, place) => ({
      left,
      right,
      shades: map.rows.map(({ blanking_pct, laps }) => ({
        share: blanking_pct / 100,
        face_K: laps[place]?.faceMax_K ?? 0,
      })),
    })),
    pale: paleOf(x),
  };
}

/** Between the middles of laps in proportion; to the frame's edges before the first and after the last. */
function lapX({ laps }: LapScale, { left, width }: Box, lap: number): number {
  const middles = [left, ...laps.map(({ middle }) => middle), left + width];
  const at = Math.min(laps.length, Math.max(-1, lap)) + 1;
  const below = Math.min(middles.length - 2, Math.floor(at));
  const [from = left, to = left] = [middles[below], middles[below + 1]];
  return from + (at - below) * (to - from);
}

/** A closed outline cut where it runs along the frame: the frame is a line of its own. */
export function linesWithin(ring: readonly Point[], { left, top, width, height }: Box): Point[][] {
  const edges: ((point: Point) => boolean)[] = [
    ({ x }) => x <= left + 0.01,
    ({ x }) => x >= left + width - 0.01,
    ({ y }) => y <= top + 0.01,
    ({ y }) => y >= top + height - 0.01,
  ];
  const lines: Point[][] = [];
  let isOpen = false;
  ring.slice(1).forEach((to, i) => {
    const from = ring[i] ?? to;
    const isOnFrame = edges.some((isOn) => isOn(from) && isOn(to));
    if (isOnFrame) isOpen = false;
    else if (isOpen) lines.at(-1)?.push(to);
    else {
      lines.push([from, to]);
      isOpen = true;
    }
  });
  return lines;
}

function paleOf({ laps }: LapScale): { left: number; right: number }[] {
  const runs: { left: number; right: number }[] = [];
  for (const { lap, left, right } of laps) {
    if (lap.counted) continue;
    const last = runs.at(-1);
    if (last && Math.abs(last.right - left) < 0.5) last.right = right;
    else runs.push({ left, right });
  }
  return runs;
}
