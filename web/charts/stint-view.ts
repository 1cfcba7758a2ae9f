import type { CornerResult, Lap, StintResult } from '../../engine/index.ts';
import type { Point } from './columns.ts';
import { lapFrame, lapScale, type LapScale } from './lap-scale.ts';
import type { Box } from './place-labels.ts';
import { standLines, stintLines, type StintLines } from './stint-lines.ts';
import type { ChartTheme } from './theme.ts';
import { steadyRange, valueScale, type ValueScale } from './value-scale.ts';

export interface PinnedRun {
  label: string;
  /** Which of the dashes its lines have. */
  dash: number;
  corner: CornerResult;
  laps: Lap[];
}

export interface PinnedLines extends StintLines {
  label: string;
  dash: number;
}

/** Where everything of the stint chart lies. */
export interface StintView {
  frame: Box;
  x: LapScale;
  y: ValueScale;
  corner: CornerResult;
  now: StintLines;
  pinned: PinnedLines[];
  stands: Point[][];
  /** Runs of counted laps past a limit: the area between line and limit is filled there. */
  tooHot: Run[];
  tooCold: Run[];
}

/** What is drawn with the run beyond it, by parts of the page that come later. */
export interface Layer {
  under(context: CanvasRenderingContext2D, view: StintView, theme: ChartTheme): void;
  over(context: CanvasRenderingContext2D, view: StintView, theme: ChartTheme): void;
  /** Its word, and the height at which it belongs at the right end. */
  end(view: StintView): { text: string; y: number } | null;
  /** The same in words. */
  note: string;
}

export interface Run {
  left: number;
  right: number;
}

export const PLOT_TOP_PX = 34;

/** Room above the face peak and below bite: fixed, so that nothing rescales under a drag [K] */
const ABOVE_K = 150;
const BELOW_K = 300;
const STEP_K = 100;
/** Room for the printed value over the highest point [K] */
const FIGURE_K = 80;

export function stintView(
  result: StintResult,
  corner: CornerResult,
  pinned: readonly PinnedRun[],
  width: number,
  plotHeight: number,
  top = PLOT_TOP_PX,
): StintView {
  const end_s = result.clock.time_s.at(-1) ?? 0;
  const x = lapScale(result.laps, end_s, lapFrame(width));
  const frame = { left: x.left, top, width: x.right - x.left, height: plotHeight };
  const y = valueScale(...rangeOf(corner), frame.top + plotHeight, frame.top);
  const { columns, window, laps } = corner;
  return {
    frame,
    x,
    y,
    corner,
    now: stintLines(corner, x, y),
    pinned: pinned.map((run) => ({ ...stintLines(run.corner, x, y), label: run.label, dash: run.dash })),
    stands: columns ? standLines(columns.face_K, result.clock.time_s, x, y) : [],
    tooHot: runsOf(x, (index) => (laps[index]?.faceMax_K ?? 0) > window.facePeak_K),
    tooCold: runsOf(x, (index) => (laps[index]?.coldestStop_K ?? Infinity) < window.bite_K),
  };
}

/** The first laps of a cold car may leave the chart at its foot: they are not what it is about. */
function rangeOf({ window, laps }: CornerResult): [number, number] {
  const values = laps
    .slice(2)
    .flatMap((lap) => [lap.faceMax_K + FIGURE_K, lap.coldestStop_K ?? lap.faceMax_K]);
  return steadyRange(window.bite_K - BELOW_K, window.facePeak_K + ABOVE_K, values, STEP_K);
}

/** Counted laps that are out, joined where they follow each other. */
function runsOf(x: LapScale, isOut: (index: number) => boolean): Run[] {
  const runs: Run[] = [];
  x.laps.forEach(({ lap, left, right }, index) => {
    if (!lap.counted || !isOut(index)) return;
    const last = runs.at(-1);
    if (last && Math.abs(last.right - left) < 0.5) last.right = right;
    else runs.push({ left, right });
  });
  return runs;
}
