/** What a sensor with a lag makes of a corner's run: its hottest and coldest moments, seen late. */
import { laggedReading } from '../evidence/lag.ts';
import type { StintModel } from '../stint/compile.ts';
import { countedOf } from '../stint/judge.ts';
import type { JudgedCorner } from '../stint/driven.ts';
import type { Clock } from '../stint/result.ts';

/** Over the counted laps; before what the sensor is off by. */
export interface Sensed {
  peak_K: number;
  /** At the start of a hard stop; null where no counted lap has one [K] */
  coldestStop_K: number | null;
}

interface Seen {
  model: StintModel;
  clock: Clock;
  face_K: Float64Array;
  judged: Pick<JudgedCorner, 'laps' | 'stops'>;
}

export function sensed({ model, clock, face_K, judged }: Seen, lag_s: number): Sensed {
  const counted = new Set(countedOf(judged.laps).map(({ lap }) => lap));
  const stops = judged.stops.values();
  const shown_K = followed(face_K.subarray(0, model.samples), clock.time_s, lag_s);
  let peak_K = -Infinity;
  let coldest_K = Infinity;
  let first = 0;
  for (const passage of model.passages) {
    const { steps } = passage.plan;
    if (passage.kind !== 'stand') {
      const isCounted = counted.has(passage.lap);
      for (const { fromStep } of passage.plan.stops) {
        const { hard } = stops.next().value!;
        if (hard && isCounted) coldest_K = Math.min(coldest_K, shown_K[first + fromStep]!);
      }
      if (isCounted) for (let i = first + 1; i <= first + steps; i++) peak_K = Math.max(peak_K, shown_K[i]!);
    }
    first += steps;
  }
  return { peak_K, coldestStop_K: Number.isFinite(coldest_K) ? coldest_K : null };
}

/** It begins with the car, as warm as that. */
function followed(face_K: Float64Array, time_s: Float64Array, lag_s: number): Float64Array {
  let shown_K = face_K[0]!;
  return face_K.map((to_K, i) => {
    if (i === 0) return shown_K;
    const stretch = { from_K: face_K[i - 1]!, to_K, lasts_s: time_s[i]! - time_s[i - 1]! };
    return (shown_K = laggedReading(shown_K, stretch, lag_s));
  });
}
