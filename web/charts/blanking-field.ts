/** Where on the map of all blankings a lap is in, too hot or too cold: areas over laps and percents. */
import { contours } from 'd3-contour';
import type { BlankingMap } from '../../engine/index.ts';
import { blankedLap, sided } from '../display/blanked-lap.ts';

/** A corner of an area: x counts laps from 0 at the middle of the first, y is percent of the mouth. */
export interface FieldPoint {
  lap: number;
  pct: number;
}

/** Closed outlines, an area's own and those of its holes. */
export type Area = FieldPoint[][];

export interface BlankingAreas {
  inside: Area;
  tooHot: Area;
  tooCold: Area;
}

const PERCENTS = 101;
/** An endless margin, as a number that can be drawn between [K] */
const ENDLESS_K = 1000;

export function blankingAreas(map: BlankingMap): BlankingAreas {
  const laps = map.rows[0]?.laps.length ?? 0;
  // one more at each side: the first and last lap reach to their outer edges
  const columns = laps + 2;
  const hot = new Array<number>(columns * PERCENTS);
  const cold = new Array<number>(columns * PERCENTS);
  for (let pct = 0; pct < PERCENTS; pct++) {
    for (let column = 0; column < columns; column++) {
      const place = Math.min(laps - 1, Math.max(0, column - 1));
      const lap = blankedLap(map, place, pct);
      const { hot_K, cold_K } = lap ? sided(lap) : { hot_K: 0, cold_K: 0 };
      hot[pct * columns + column] = Math.min(ENDLESS_K, hot_K);
      cold[pct * columns + column] = Math.min(ENDLESS_K, cold_K);
    }
  }
  const areaOf = (values: number[]): Area => areaIn(values, columns);
  return {
    inside: areaOf(hot.map((value, i) => Math.min(value, cold[i] ?? 0))),
    tooHot: areaOf(hot.map((value) => -value)),
    tooCold: areaOf(cold.map((value) => -value)),
  };
}

/** Where values are at least 0. The values stand at the middles of cells one wide, and the outermost reach half a cell further. */
function areaIn(values: number[], columns: number): Area {
  const { coordinates } = contours().size([columns, PERCENTS]).contour(values, 0);
  return coordinates.flat().map((ring) =>
    ring.map(([x = 0, y = 0]) => ({
      lap: x - 1.5,
      pct: Math.min(PERCENTS - 1, Math.max(0, y - 0.5)),
    })),
  );
}
