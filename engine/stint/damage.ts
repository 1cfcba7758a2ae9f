/**
 * What a stint asks of a disc beyond its temperatures: how unevenly it is heated, and how long it is past its window.
 *
 * A face that is hotter than the core of its cheek wants to grow and cannot, and is squeezed until it yields; cold again,
 * it is in tension, and there cracks begin. The difference between rubbed face and vane wall (of a solid disc its
 * mid-plane) tells how much: a fully held face stands under σ = E α (T_face − T_mean) / (1 − ν) (Timoshenko & Goodier,
 * Theory of Elasticity, from memory), and with E = 105 GPa, α = 12e-6 1/K, ν = 0.26 some 150 K over the mean reach the
 * 250 MPa at which common grey iron breaks in tension. All three are from memory.
 */
import type { CornerColumns } from '../disc/columns.ts';
import { countedOf } from './judge.ts';
import type { Damage, LapSummary, Stop } from './result.ts';

/** A stop whose face runs further than this above its core is counted; of iron. Common practice, from memory [K] */
const HARSH_K = 200;

/** Rubbed face minus vane wall, sample by sample [K] */
export function faceOverCore({ face_K, wall_K }: CornerColumns, samples: number): Float64Array {
  const over_K = new Float64Array(samples);
  for (let i = 0; i < samples; i++) over_K[i] = face_K[i]! - wall_K[i]!;
  return over_K;
}

/** The largest difference and the harsh stops of the whole stint; the times are of the laps that are judged. */
export function damageOf(laps: LapSummary[], stops: Stop[]): Damage {
  const worst = laps.reduce<LapSummary | null>(
    (top, lap) => (top && top.largestDifference_K >= lap.largestDifference_K ? top : lap),
    null,
  );
  const there = stops
    .filter((stop) => stop.lap === worst?.lap)
    .reduce<Stop | null>(
      (top, stop) => (top && top.largestDifference_K >= stop.largestDifference_K ? top : stop),
      null,
    );
  const judged = countedOf(laps);
  const sum = (of: (lap: LapSummary) => number): number => judged.reduce((total, lap) => total + of(lap), 0);
  return {
    largestDifference_K: worst?.largestDifference_K ?? 0,
    place: there?.place ?? '',
    lap: worst?.lap ?? 0,
    stopsAbove200: stops.filter((stop) => stop.largestDifference_K > HARSH_K).length,
    stops: stops.length,
    aboveFacePeak_s: sum((lap) => lap.aboveFacePeak_s),
    belowBite_s: sum((lap) => lap.belowBite_s),
    aboveBulk_s: sum((lap) => lap.aboveBulk_s),
  };
}
