/** Several laps that nothing marks: the speed repeats itself over the distance, lap after lap. */
import { LAP_M } from './judge-laps.ts';
import type { MotionLog } from './motion-log.ts';
import { quantile } from './statistics.ts';

/** Speeds are compared at even steps of the way [m] */
const STEP_M = 10;
/** As much of the way is looked at as tells laps of any length apart; the rest follows [m] */
const LOOKED_AT_M = 100_000;
/** Two laps with a scrap of a third missing are still two: a lap may be this share of the way. */
const LONGEST_SHARE = 0.55;
/** Laps of one car correlate this strongly; parts of one lap do not (0.45 at most on the shipped circuits). */
const STRONG = 0.8;
/** Twice a lap repeats as well as one does: of lags this near the best, the shortest is the lap. */
const AS_GOOD = 0.05;
/** A lap has at least so many corners; what has fewer is an oval's half, or no circuit. */
const LEAST_CORNERS = 3;
/** A corner's speed lies below the straights around by this share of the whole range. */
const DIP = 0.12;
/** One lap is longer or shorter than another by at most this share, by its line and the wheel's slip. */
const LINES = 0.03;
/** Slower than this it stands [m/s] */
const STANDS_MPS = 1;

export interface Repeats {
  /** Starts since the first row [s] */
  starts_s: number[];
  length_m: number;
  /** Whole laps, and whether there is a part of one more. */
  laps: number;
  hasPart: boolean;
}

/** Laps of a log without marks; null where the speed does not repeat. */
export function repeatsOf(log: MotionLog): Repeats | null {
  const { speeds, times_s } = alongWay(log);
  const lag = lagOf(speeds.subarray(0, LOOKED_AT_M / STEP_M));
  if (lag === 0) return null;
  const starts = startsOf(speeds, lag);
  const lengths = starts.slice(1).map((start, i) => start - starts[i]!);
  const rest = (speeds.length - starts.at(-1)!) / lag;
  return {
    starts_s: starts.map((at) => +times_s[at]!.toFixed(3)),
    length_m: STEP_M * quantile(lengths, 0.5),
    laps: lengths.length + (rest >= 1 - LINES ? 1 : 0),
    hasPart: rest > LINES && rest < 1 - LINES,
  };
}

/** Speed and time at even steps from where the car first moves. */
function alongWay({ time_s, speed_mps }: MotionLog): { speeds: Float64Array; times_s: Float64Array } {
  const speeds: number[] = [];
  const times_s: number[] = [];
  const moves = Math.max(
    0,
    speed_mps.findIndex((v) => v > STANDS_MPS),
  );
  let way_m = 0;
  for (let i = moves; i < time_s.length; i++) {
    const before = Math.max(moves, i - 1);
    const step_m = ((speed_mps[i]! + speed_mps[before]!) / 2) * (time_s[i]! - time_s[before]!);
    while (speeds.length * STEP_M <= way_m + step_m) {
      const w = step_m > 0 ? (speeds.length * STEP_M - way_m) / step_m : 0;
      speeds.push(speed_mps[before]! + w * (speed_mps[i]! - speed_mps[before]!));
      times_s.push(time_s[before]! + w * (time_s[i]! - time_s[before]!));
    }
    way_m += step_m;
  }
  return { speeds: Float64Array.from(speeds), times_s: Float64Array.from(times_s) };
}

/** The lag of a lap in steps; 0 where nothing repeats. */
function lagOf(speeds: Float64Array): number {
  const least = LAP_M.least / STEP_M;
  const most = Math.min(LAP_M.most / STEP_M, Math.floor(LONGEST_SHARE * speeds.length));
  const alike = new Float64Array(Math.max(0, most + 1));
  for (let lag = least; lag <= most; lag++) alike[lag] = likeness(speeds, lag);
  const best = alike.reduce((a, b) => Math.max(a, b), 0);
  if (best < STRONG) return 0;
  const isPeak = (lag: number): boolean =>
    alike[lag]! >= best - AS_GOOD && alike[lag]! >= alike[lag - 1]! && alike[lag]! >= (alike[lag + 1] ?? 0);
  for (let lag = least; lag <= most; lag++)
    if (isPeak(lag)) return cornersIn(speeds.subarray(0, lag)) >= LEAST_CORNERS ? lag : 0;
  return 0;
}

/** Correlation of the speed with itself a lag further on. */
function likeness(speeds: Float64Array, lag: number): number {
  const n = speeds.length - lag;
  let [sx, sy, sxx, syy, sxy] = [0, 0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    const x = speeds[i]!;
    const y = speeds[i + lag]!;
    sx += x;
    sy += y;
    sxx += x * x;
    syy += y * y;
    sxy += x * y;
  }
  const spread = (sxx - (sx * sx) / n) * (syy - (sy * sy) / n);
  return spread > 0 ? (sxy - (sx * sy) / n) / Math.sqrt(spread) : 0;
}

/** Places that are slower than the way before and behind them. */
function cornersIn(speeds: Float64Array): number {
  const dip = DIP * (Math.max(...speeds) - Math.min(...speeds));
  let corners = 0;
  let isFalling = true;
  let turn = speeds[0]!;
  for (const v of speeds) {
    if (isFalling ? v < turn : v > turn) turn = v;
    else if (Math.abs(v - turn) > dip) {
      if (isFalling) corners += 1;
      isFalling = !isFalling;
      turn = v;
    }
  }
  return corners;
}

/** Each lap begins where it is most like the one before. */
function startsOf(speeds: Float64Array, lag: number): number[] {
  const reach = Math.ceil(LINES * lag);
  const starts = [0];
  for (let start = 0; start + lag - reach < speeds.length;) {
    let [best, next] = [Infinity, start + lag];
    for (let at = start + lag - reach; at <= start + lag + reach; at++) {
      const n = Math.min(lag, speeds.length - at);
      if (n < lag / 4) break;
      let sum = 0;
      for (let i = 0; i < n; i++) sum += (speeds[at + i]! - speeds[start + i]!) ** 2;
      if (sum / n < best) [best, next] = [sum / n, at];
    }
    if (next > speeds.length - 1) break;
    starts.push(next);
    start = next;
  }
  return starts;
}
