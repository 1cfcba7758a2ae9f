/** A corner against its window. The definition is common practice, no source. */
import type { Brake } from '../scenario/schema.ts';
import { kelvin } from '../units.ts';
import type { LapSummary, Limit, Verdict, WindowLimits } from './result.ts';

/** How far above face peak a short excursion may go, and how long it may last in a lap. */
const HOT_EXCESS_K = 50;
const HOT_TIME_S = 0.5;
/** How far under bite one stop a lap may start, if the face passes bite within this time. */
export const COLD_EXCESS_K = 40;
const COLD_TIME_S = 0.5;

export function windowOf({ window }: Brake): WindowLimits {
  return {
    bite_K: kelvin(window.bite_C),
    facePeak_K: kelvin(window.face_peak_C),
    bulk_K: kelvin(window.bulk_C),
    run_K: window.run_C === null ? null : kelvin(window.run_C),
  };
}

/** What a lap did, before it is judged. */
export type LapFacts = Omit<LapSummary, 'tooHot' | 'tooCold' | 'in'>;

/** How cold a hard stop began under bite, and how long the face took to pass it. */
export interface ColdStart {
  under_K: number;
  until_s: number;
}

/** Past a hot limit for longer or by more than is forgiven. */
export function isTooHot(lap: LapFacts, window: WindowLimits): boolean {
  const isBrief = lap.aboveFacePeak_s <= HOT_TIME_S && lap.faceMax_K <= window.facePeak_K + HOT_EXCESS_K;
  return (lap.faceMax_K > window.facePeak_K && !isBrief) || lap.bulkMax_K > window.bulk_K;
}

/** Under a cold limit by more than the one brief start a lap that is forgiven. */
export function isTooCold(lap: LapFacts, window: WindowLimits, coldStarts: ColdStart[]): boolean {
  if (window.run_K !== null && lap.bulkMean_K < window.run_K) return true;
  const excused = coldStarts.every(
    ({ under_K, until_s }) => under_K <= COLD_EXCESS_K && until_s <= COLD_TIME_S,
  );
  return coldStarts.length > 1 || !excused;
}

/** What the verdict reads of a lap. */
export type JudgedLap = Pick<
  LapSummary,
  | 'lap'
  | 'kind'
  | 'in'
  | 'tooHot'
  | 'tooCold'
  | 'hardStops'
  | 'faceMax_K'
  | 'facePeakPlace'
  | 'bulkMax_K'
  | 'bulkMean_K'
  | 'coldestStop_K'
  | 'coldestStopPlace'
>;

/** The laps that count; all where none does. */
export function countedOf<Lap extends Pick<LapSummary, 'in'>>(laps: Lap[]): Lap[] {
  const counted = laps.filter((lap) => lap.in !== null);
  return counted.length > 0 ? counted : laps;
}

/** The verdict over the counted laps: in or out, which way first, and the margins. */
export function judge(laps: JudgedLap[], window: WindowLimits, fromPushLap: number): Verdict {
  const counted = laps.filter((lap) => lap.in !== null);
  const judged = countedOf(laps);
  const hot = extreme(judged, (lap) => [
    { limit: 'face peak', margin: window.facePeak_K - lap.faceMax_K, place: lap.facePeakPlace },
    { limit: 'bulk', margin: window.bulk_K - lap.bulkMax_K, place: lap.facePeakPlace },
  ]);
  const cold = extreme(judged, (lap) => [
    {
      limit: 'bite',
      margin: (lap.coldestStop_K ?? Infinity) - window.bite_K,
      place: lap.coldestStopPlace ?? '',
    },
    { limit: 'run', margin: window.run_K === null ? Infinity : lap.bulkMean_K - window.run_K, place: '' },
  ]);
  const out = counted.filter((lap) => lap.in === false);
  const coldestStop_K = least(judged.map((lap) => lap.coldestStop_K ?? Infinity));
  const facePeak_K = -least(judged.map((lap) => -lap.faceMax_K));
  const isOut = out.length > 0;
  const reason = reasonNotJudged(laps, counted, fromPushLap) ?? (isOut ? null : reasonHalfJudged(counted));
  const hotOut = counted.some((lap) => lap.tooHot);
  const coldOut = counted.some((lap) => lap.tooCold);
  return {
    status: reason ? 'not judged' : hotOut && coldOut ? 'both' : hotOut ? 'hot' : coldOut ? 'cold' : 'in',
    reason,
    countedLaps: counted.length,
    firstLapOut: out[0]?.lap ?? null,
    hotMargin_K: hot.margin,
    hotLimit: hot.limit,
    hotPlace: hot.place,
    hotLap: hot.lap,
    coldMargin_K: cold.margin,
    coldLimit: cold.limit,
    coldPlace: cold.place,
    coldLap: cold.lap,
    facePeak_K,
    coldestStop_K: Number.isFinite(coldestStop_K) ? coldestStop_K : null,
    swing_K: Number.isFinite(coldestStop_K) ? facePeak_K - coldestStop_K : null,
  };
}

function reasonNotJudged(laps: JudgedLap[], counted: JudgedLap[], from_lap: number): string | null {
  if (counted.length > 0) return null;
  const pushed = laps.filter((lap) => lap.kind === 'push').length;
  return `no lap counts: ${pushed} push ${pushed === 1 ? 'lap' : 'laps'}, judged from push lap ${from_lap}`;
}

/** Without a hard stop nothing says whether the disc is warm enough: that is no disc inside its window. */
function reasonHalfJudged(counted: JudgedLap[]): string | null {
  return counted.some((lap) => lap.hardStops > 0) ? null : 'no counted lap has a hard stop';
}

interface Margin {
  limit: Limit;
  margin: number;
  place: string;
}

/** The smallest margin over all laps, and where. */
function extreme(laps: JudgedLap[], of: (lap: JudgedLap) => Margin[]): Margin & { lap: number } {
  const all = laps.flatMap((lap) => of(lap).map((margin) => ({ ...margin, lap: lap.lap })));
  const none = { limit: 'face peak' as Limit, margin: Infinity, place: '', lap: 0 };
  return all.reduce((small, next) => (next.margin < small.margin ? next : small), all[0] ?? none);
}

const least = (values: number[]): number => values.reduce((small, value) => Math.min(small, value), Infinity);
