/** What each lap did to one corner: extremes, hard stops, time above the limit. */
import type { CornerColumns } from '../disc/columns.ts';
import type { Brake } from '../scenario/schema.ts';
import { mpsFromKmh } from '../units.ts';
import type { StintModel } from './compile.ts';
import { isTooCold, isTooHot, type ColdStart, type LapFacts } from './judge.ts';
import type { LapPassage, Passage } from './passages.ts';
import type { Axle, Clock, LapSummary, Stop, WindowLimits } from './result.ts';

export interface Watched {
  model: StintModel;
  trace: CornerColumns;
  clock: Clock;
  window: WindowLimits;
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
  { trace, clock }: Watched,
  { plan, lap }: LapPassage,
  at: { first: number; top_mps: number; brake: Brake },
): Stop[] {
  const { hard_stop_from_kmh, hard_stop_energy } = at.brake.window;
  return plan.stops.map((stop) => {
    const from = at.first + stop.fromStep;
    const to = at.first + stop.toStep;
    const taken = (stop.from_mps ** 2 - stop.to_mps ** 2) / at.top_mps ** 2;
    return {
      lap,
      place: stop.place,
      distance_m: stop.from_m,
      start_s: clock.time_s[from]!,
      end_s: clock.time_s[to]!,
      hard: stop.from_mps > mpsFromKmh(hard_stop_from_kmh) && taken >= hard_stop_energy,
      startFace_K: trace.face_K[from]!,
      peakFace_K: peakBetween(trace.face_K, clock.time_s, from, to),
    };
  });
}

function lapSummary(watched: Watched, passage: LapPassage, first: number, stops: Stop[]): LapSummary {
  const { trace, clock, window, axle } = watched;
  const { plan, lap, kind } = passage;
  const last = first + plan.steps;
  const hard = stops.filter((stop) => stop.hard);
  const coldest = hard.reduce<Stop | null>(
    (least, stop) => (least && least.startFace_K <= stop.startFace_K ? least : stop),
    null,
  );
  const span = { faceMin: Infinity, bulkMax: -Infinity, highest: first };
  let faceTime = 0,
    bulkTime = 0,
    above = 0;
  for (let i = first + 1; i <= last; i++) {
    const dt = clock.time_s[i]! - clock.time_s[i - 1]!;
    const face = trace.face_K[i]!;
    faceTime += (dt * (face + trace.face_K[i - 1]!)) / 2;
    bulkTime += (dt * (trace.cheek_K[i]! + trace.cheek_K[i - 1]!)) / 2;
    above += dt * shareAbove(trace.face_K[i - 1]!, face, window.facePeak_K);
    span.faceMin = Math.min(span.faceMin, face);
    span.bulkMax = Math.max(span.bulkMax, trace.cheek_K[i]!);
    if (face > trace.face_K[span.highest]!) span.highest = i;
  }
  const facts: LapFacts = {
    lap,
    kind,
    faceMin_K: span.faceMin,
    faceMean_K: faceTime / plan.duration_s,
    faceMax_K: peakBetween(
      trace.face_K,
      clock.time_s,
      Math.max(first, span.highest - 1),
      Math.min(last, span.highest + 1),
    ),
    facePeakPlace: hottestPlace(stops, plan.place(clock.distance_m[span.highest]!)),
    bulkMax_K: span.bulkMax,
    bulkMean_K: bulkTime / plan.duration_s,
    coldestStop_K: coldest?.startFace_K ?? null,
    coldestStopPlace: coldest?.place ?? null,
    hardStops: hard.length,
    belowBite: hard.filter((stop) => stop.startFace_K < window.bite_K).length,
    aboveFacePeak_s: above,
  };
  const tooHot = isTooHot(facts, window);
  const tooCold = isTooCold(facts, window, coldStarts(watched, hard));
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
function coldStarts({ trace, clock, window }: Watched, hard: Stop[]): ColdStart[] {
  return hard
    .filter((stop) => stop.startFace_K < window.bite_K)
    .map((stop) => {
      let i = clock.time_s.findIndex((t) => t >= stop.start_s);
      while (i < clock.time_s.length - 1 && clock.time_s[i]! < stop.end_s && trace.face_K[i]! < window.bite_K)
        i++;
      const passed = trace.face_K[i]! >= window.bite_K;
      return {
        under_K: window.bite_K - stop.startFace_K,
        until_s: passed ? clock.time_s[i]! - stop.start_s : Infinity,
      };
    });
}

/** Share of a step spent above a limit, the temperature running straight from one end to the other [-] */
function shareAbove(from: number, to: number, limit: number): number {
  if (from <= limit && to <= limit) return 0;
  if (from > limit && to > limit) return 1;
  return (Math.max(from, to) - limit) / Math.abs(to - from);
}

/** Highest value between two samples: where it lies inside, the top of a parabola through three samples. */
function peakBetween(column: Float64Array, time_s: Float64Array, from: number, to: number): number {
  let top = from;
  for (let i = from; i <= to; i++) if (column[i]! > column[top]!) top = i;
  const [a, b, c] = [column[top - 1], column[top]!, column[top + 1]];
  if (a === undefined || c === undefined || top === from || top === to) return b;
  const [h1, h2] = [time_s[top]! - time_s[top - 1]!, time_s[top + 1]! - time_s[top]!];
  const curve = ((c - b) / h2 - (b - a) / h1) / (h1 + h2);
  if (curve >= 0) return b;
  const slopeAt = (b - a) / h1 + curve * h1;
  return b - slopeAt ** 2 / (4 * curve);
}
