import type { CornerResult, Lap, StintResult, Stop } from '../../engine/index.ts';
import { traceLine, type Point } from './columns.ts';
import { distanceScale, type DistanceScale } from './distance-scale.ts';
import { lapFrame } from './lap-scale.ts';
import type { Box } from './place-labels.ts';
import type { PinnedRun } from './stint-view.ts';
import { steadyRange, valueScale, type ValueScale } from './value-scale.ts';

/** The full trace of one lap: temperatures above, speed and braking power below, by distance. */
export interface TraceView {
  frame: Box;
  speedFrame: Box;
  powerFrame: Box;
  x: DistanceScale;
  y: ValueScale;
  speedY: ValueScale;
  powerY: ValueScale;
  corner: CornerResult;
  face: Point[];
  cheek: Point[];
  pinned: Point[];
  speed: Point[];
  /** Of all four brakes. */
  power: Point[];
  stops: TraceStop[];
}

export interface TraceStop {
  stop: Stop;
  left: number;
  right: number;
  start: Point;
  peak: Point;
}

const TRACE_TOP_PX = 24;
const GAP_PX = 8;
const SPEED_PX = 42;
const POWER_PX = 34;
const MARGIN_K = 75;
const STEP_K = 50;
/** So that a stint that hardly brakes does not look as if it did [W] */
const LEAST_POWER_W = 3e5;
/** Room for the printed value over the highest point [K] */
const FIGURE_K = 45;

export const traceHeight = (plotHeight: number): number =>
  TRACE_TOP_PX + plotHeight + 2 * GAP_PX + SPEED_PX + POWER_PX + 22;

export function traceView(
  result: StintResult,
  corner: CornerResult,
  pinned: PinnedRun | null,
  lap: Lap,
  width: number,
  plotHeight: number,
): TraceView {
  const [left, right] = lapFrame(width);
  const { clock, track } = result;
  const x = distanceScale(clock, lap, track.length_m, [left, right]);
  const frame = { left, top: TRACE_TOP_PX, width: x.right - left, height: plotHeight };
  const speedFrame = { ...frame, top: frame.top + plotHeight + GAP_PX, height: SPEED_PX };
  const powerFrame = { ...frame, top: speedFrame.top + SPEED_PX + GAP_PX, height: POWER_PX };
  const face_K = corner.columns?.face_K ?? new Float64Array();
  const cheek_K = corner.columns?.cheek_K ?? face_K;
  const { bite_K, facePeak_K } = corner.window;
  const samples = face_K.subarray(lap.firstSample, lap.lastSample + 1);
  const reach = [Math.min(...samples), Math.max(...samples) + FIGURE_K];
  const [low, high] = steadyRange(bite_K - MARGIN_K, facePeak_K + MARGIN_K, reach, STEP_K);
  const y = valueScale(low, high, frame.top + plotHeight, frame.top);
  const speedY = valueScale(0, result.topSpeed_mps * 1.08, speedFrame.top + SPEED_PX, speedFrame.top);
  const most_W = Math.max(LEAST_POWER_W, ...clock.brakePower_W) * 1.08;
  const powerY = valueScale(0, most_W, powerFrame.top + POWER_PX, powerFrame.top);
  const line = (values: Float64Array, scale: ValueScale): Point[] =>
    values.length === 0
      ? []
      : traceLine(lap.firstSample, lap.lastSample, x.xOfSample, (index) => scale.of(values[index] ?? 0));
  const stops = corner.stops
    .filter((stop) => stop.lap === lap.lap)
    .map((stop) => {
      const [from, to] = [x.xOf(stop.start_s), x.xOf(stop.end_s)];
      return {
        stop,
        left: from,
        right: to,
        start: { x: from, y: y.of(stop.startFace_K) },
        peak: { x: to, y: y.of(stop.peakFace_K) },
      };
    });
  return {
    frame,
    speedFrame,
    powerFrame,
    x,
    y,
    speedY,
    powerY,
    corner,
    face: line(face_K, y),
    cheek: line(cheek_K, y),
    pinned: pinnedLine(pinned, lap, x, y),
    speed: line(clock.speed_mps, speedY),
    power: line(clock.brakePower_W, powerY),
    stops,
  };
}

/** The pinned run's clock is not known here: its lap is laid over this one sample by sample, stretched to fit. */
function pinnedLine(pinned: PinnedRun | null, lap: Lap, x: DistanceScale, y: ValueScale): Point[] {
  const other = pinned?.laps.find((each) => each.lap === lap.lap);
  const face_K = pinned?.corner.columns?.face_K;
  if (!other || !face_K) return [];
  const [own, theirs] = [lap.lastSample - lap.firstSample, other.lastSample - other.firstSample];
  const own_K = (index: number): number =>
    face_K[other.firstSample + Math.round(((index - lap.firstSample) / Math.max(1, own)) * theirs)] ?? 0;
  return traceLine(lap.firstSample, lap.lastSample, x.xOfSample, (index) => y.of(own_K(index)));
}
