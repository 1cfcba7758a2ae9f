/** What each lap did to one corner: extremes, hard stops, time above the limit. */
import type { CornerColumns } from '../disc/columns.ts';
import type { Brake } from '../scenario/schema.ts';
import { mpsFromKmh } from '../units.ts';
import type { StintModel } from './compile.ts';
import { isTooCold, isTooHot, type ColdStart, type LapFacts } from './judge.ts';
import { peakIn, secondsAbove, type Stretch } from './measures.ts';
import type { LapPassage, Passage } from './passages.ts';
import { stopPedal, type Friction } from './pedal.ts';
import type { Axle, Clock, LapSummary, Stop, WindowLimits } from './result.ts';

export interface Watched {
  model: StintModel;
  trace: CornerColumns;
  /** Rubbed face over vane wall [K] */
  overCore_K: Float64Array;
  clock: Clock;
  window: WindowLimits;
  friction: Friction;
  axle: Axle;
}

/** All laps and all braking phases of a corner. */
export function summariseLaps(watched: Watched, brake: Brake): { laps: LapSummary[]; stops: Stop[] } {
  const { passages } = watched.model;
  const top_mps = topSpeed(passages);
  const laps: LapSummary[] = [];
  const stops: Stop[] = [];
  let first = 0;
  for (const passage of passages) {
    if (passage.kind !== 'stand') {
      const found = stopsOf(watched, passage, { first, top_mps, brake });
      stops.push(...found);
      laps.push(lapSummary(watched, passage, first, found));
    }
    first += passage.plan.steps;
  }
  return { laps, stops };
}

function topSpeed(passages: Passage[]): number {
  const driven = passages.filter((p): p is LapPassage => p.kind !== 'stand');
  return Math.max(
    1,
    ...driven
      .filter((p) => p.kind === 'push' || driven.every((q) => q.kind !== 'push'))
      .map((p) => p.plan.topSpeed_mps),
  );
}

function stopsOf(
  { trace, overCore_K, clock, friction }: Watched,
  { plan, lap }: LapPassage,
  at: { first: number; top_mps: number; brake: Brake },
): Stop[] {
  const { face_K } = trace;
  const { time_s } = clock;
  const { hard_stop_from_kmh, hard_stop_energy } = at.brake.window;
  return plan.stops.map((stop) => {
    const from = at.first + stop.fromStep;
    const to = at.first + stop.toStep;
    const peakFace_K = peakIn({ column: face_K, time_s, from, to });
    const face = { start_K: face_K[from]!, least_K: least(face_K, from, to), most_K: peakFace_K };
    const taken = (stop.from_mps ** 2 - stop.to_mps ** 2) / at.top_mps ** 2;
    return {
      lap,
      place: stop.place,
      distance_m: stop.from_m,
      start_s: time_s[from]!,
      end_s: time_s[to]!,
      hard: stop.from_mps > mpsFromKmh(hard_stop_from_kmh) && taken >= hard_stop_energy,
      startFace_K: face.start_K,
      peakFace_K,
      largestDifference_K: peakIn({ column: overCore_K, time_s, from, to }),
      pedal: stopPedal(friction, face),
    };
  });
}

function least(column: Float64Array, from: number, to: number): number {
  let low = column[from]!;
  for (let i = from + 1; i <= to; i++) low = Math.min(low, column[i]!);
  return low;
}

function lapSummary(watched: Watched, passage: LapPassage, first: number, stops: Stop[]): LapSummary {
  const { trace, overCore_K, clock, window, axle } = watched;
  const { plan, lap, kind } = passage;
  const last = first + plan.steps;
  const hard = stops.filter((stop) => stop.hard);
  const coldest = hard.reduce<Stop | null>(
    (least, stop) => (least && least.startFace_K <= stop.startFace_K ? least : stop),
    null,
  );
  let faceMin = Infinity;
  let bulkMax = -Infinity;
  let overCore = -Infinity;
  let highest = first;
  let faceTime = 0;
  let bulkTime = 0;
  for (let i = first + 1; i <= last; i++) {
    const dt = clock.time_s[i]! - clock.time_s[i - 1]!;
    const face = trace.face_K[i]!;
    faceTime += (dt * (face + trace.face_K[i - 1]!)) / 2;
    bulkTime += (dt * (trace.cheek_K[i]! + trace.cheek_K[i - 1]!)) / 2;
    faceMin = Math.min(faceMin, face);
    bulkMax = Math.max(bulkMax, trace.cheek_K[i]!);
    if (face > trace.face_K[highest]!) highest = i;
    overCore = Math.max(overCore, overCore_K[i]!);
  }
  const face: Stretch = { column: trace.face_K, time_s: clock.time_s, from: first, to: last };
  const facts: LapFacts = {
    lap,
    kind,
    faceMin_K: faceMin,
    faceMean_K: faceTime / plan.duration_s,
    // between samples only within a stop: where a brake goes on or off there is a corner, and no crest
    faceMax_K: Math.max(trace.face_K[highest]!, ...stops.map((stop) => stop.peakFace_K)),
    facePeakPlace: hottestPlace(stops, plan.place(clock.distance_m[highest]!)),
    bulkMax_K: bulkMax,
    bulkMean_K: bulkTime / plan.duration_s,
    coldestStop_K: coldest?.startFace_K ?? null,
    coldestStopPlace: coldest?.place ?? null,
    hardStops: hard.length,
    belowBite: hard.filter((stop) => stop.startFace_K < window.bite_K).length,
    belowBite_s: plan.stops.reduce((sum, stop) => sum + secondsBelow(face, stop, window.bite_K), 0),
    aboveFacePeak_s: secondsAbove(face, window.facePeak_K),
    aboveBulk_s: secondsAbove({ ...face, column: trace.cheek_K }, window.bulk_K),
    largestDifference_K: Math.max(overCore, ...stops.map((stop) => stop.largestDifference_K)),
  };
  const tooHot = isTooHot(facts, window);
  const tooCold = isTooCold(facts, window, coldStarts(watched, first, { plan, stops }));
  const counted = passage.counted[axle === 'front' ? 0 : 1]!;
  return { ...facts, tooHot, tooCold, in: counted ? !tooHot && !tooCold : null };
}

function hottestPlace(stops: Stop[], otherwise: string): string {
  return (
    stops.reduce<Stop | null>((top, stop) => (top && top.peakFace_K >= stop.peakFace_K ? top : stop), null)
      ?.place ?? otherwise
  );
}

/** For each hard stop that starts cold: how cold, and how long until the face passes bite. */
function coldStarts(
  { trace, clock, window }: Watched,
  first: number,
  { plan, stops }: { plan: LapPassage['plan']; stops: Stop[] },
): ColdStart[] {
  return stops.flatMap((stop, n) => {
    if (!stop.hard || stop.startFace_K >= window.bite_K) return [];
    const { fromStep, toStep } = plan.stops[n]!;
    let i = first + fromStep;
    while (i < first + toStep && trace.face_K[i]! < window.bite_K) i++;
    const passed = trace.face_K[i]! >= window.bite_K;
    return {
      under_K: window.bite_K - stop.startFace_K,
      until_s: passed ? clock.time_s[i]! - stop.start_s : Infinity,
    };
  });
}

/** Time of a braking phase with the column under a limit [s] */
function secondsBelow(lap: Stretch, stop: { fromStep: number; toStep: number }, limit: number): number {
  const [from, to] = [lap.from + stop.fromStep, lap.from + stop.toStep];
  return lap.time_s[to]! - lap.time_s[from]! - secondsAbove({ ...lap, from, to }, limit);
}
