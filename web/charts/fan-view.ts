/** The fan of a spread over the laps of the stint chart: where it lies, and single draws in it. */
import type { CornerSpread, DrawnStint, LapSpread } from '../../engine/index.ts';
import type { Point } from './columns.ts';
import type { StintView } from './stint-view.ts';

/** The edges of a band, the low one and the high one, from left to right. */
export interface Band {
  low: Point[];
  high: Point[];
}

/** The middle 80 % of the draws, lap by lap. */
export interface FanView {
  peak: Band;
  /** Broken where no draw has a hard stop. */
  coldest: Band[];
  /** One draw, where one is shown. */
  drawn: { peak: Point[]; coldest: Point[][] } | null;
}

type Scales = Pick<StintView, 'x' | 'y'>;

export function fanView({ laps, stints }: CornerSpread, at: Scales, draw: number | null): FanView {
  const stint = draw === null ? undefined : stints[draw];
  const [peak] = bandsOf(laps, at, ({ facePeak_K }) => facePeak_K);
  return {
    peak: peak ?? { low: [], high: [] },
    coldest: bandsOf(laps, at, ({ coldestStop_K }) => coldestStop_K),
    drawn: stint ? drawnLines(stint, laps, at) : null,
  };
}

/** A point of a lap that the chart has, in the middle of its cell. */
function placer({ x, y }: Scales): (lap: number, value_K: number) => Point | null {
  return (lap, value_K) => {
    const cell = x.laps.find((each) => each.lap.lap === lap);
    return cell ? { x: cell.middle, y: y.of(value_K) } : null;
  };
}

function bandsOf(
  laps: readonly LapSpread[],
  scales: Scales,
  of: (lap: LapSpread) => LapSpread['coldestStop_K'],
): Band[] {
  const place = placer(scales);
  const bands: Band[] = [];
  let open: Band | null = null;
  for (const each of laps) {
    const quantiles = of(each);
    const low = quantiles && place(each.lap, quantiles.p10);
    const high = quantiles && place(each.lap, quantiles.p90);
    if (!low || !high) {
      open = null;
      continue;
    }
    if (!open) bands.push((open = { low: [], high: [] }));
    open.low.push(low);
    open.high.push(high);
  }
  return bands;
}

function drawnLines(
  stint: DrawnStint,
  laps: readonly LapSpread[],
  scales: Scales,
): NonNullable<FanView['drawn']> {
  const place = placer(scales);
  const coldest: Point[][] = [];
  let isOpen = false;
  laps.forEach(({ lap }, i) => {
    const value = stint.coldestStop_K[i] ?? null;
    const point = value === null ? null : place(lap, value);
    if (point && !isOpen) coldest.push([]);
    if (point) coldest.at(-1)?.push(point);
    isOpen = point !== null;
  });
  const peak = laps.flatMap(({ lap }, i) => place(lap, stint.facePeak_K[i] ?? 0) ?? []);
  return { peak, coldest };
}
