import type { CornerResult } from '../../engine/index.ts';
import type { LapScale } from './lap-scale.ts';
import type { Box } from './place-labels.ts';
import { valueScale, type ValueScale } from './value-scale.ts';

/** One row of lap cells: the swing of each lap against the window. */
export interface CellsView {
  frame: Box;
  y: ValueScale;
  corner: CornerResult;
  bars: Bar[];
}

export interface Bar {
  left: number;
  width: number;
  top: number;
  bottom: number;
  counted: boolean;
  isHot: boolean;
  isCold: boolean;
  /** The lap reaches below the row. */
  isCut: boolean;
}

const SPAN_K = 150;
const EDGE_PX = 3;

export function cellsView(corner: CornerResult, x: LapScale, top: number, height: number): CellsView {
  const last = x.laps.at(-1);
  const frame = { left: x.left, top, width: (last?.right ?? x.right) - x.left, height };
  const { bite_K, facePeak_K } = corner.window;
  const y = valueScale(bite_K - SPAN_K, facePeak_K + SPAN_K, top + height, top);
  const bars = x.laps.flatMap(({ lap, middle }, index) => {
    const summary = corner.laps[index];
    if (!summary) return [];
    const coldest_K = summary.coldestStop_K ?? summary.faceMin_K;
    const width = x.lapWidth * (lap.counted ? 0.56 : 0.32);
    const foot = top + height - EDGE_PX;
    return {
      left: middle - width / 2,
      width,
      top: Math.min(foot - 2, Math.max(top + EDGE_PX, y.of(summary.faceMax_K))),
      bottom: Math.min(foot, Math.max(top + 8, y.of(coldest_K))),
      counted: lap.counted,
      isHot: lap.counted && summary.faceMax_K > facePeak_K,
      isCold: lap.counted && summary.belowBite > 0,
      isCut: coldest_K < y.low,
    };
  });
  return { frame, y, corner, bars };
}
