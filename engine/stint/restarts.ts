/**
 * Each time the discs come back from slow or standing: how cold the first hard stop starts and how long until they are warm.
 *
 * A restart is the first out-lap or push lap after the start of the stint, safety-car laps, an in-lap or a standing car;
 * its stretch lasts until the next of these. *Warm* is the first hard stop of the stretch that starts at or above bite and
 * after which none of the stretch starts more than 40 K under it. Common practice, no source.
 */
import { COLD_EXCESS_K } from './judge.ts';
import type { LapKind, Restart, Stop, WindowLimits } from './result.ts';

/** A driven lap or a standing car, in the order of the stint. */
export type Driven = { kind: LapKind; lap: number } | { kind: 'stand' };

/** All restarts of a corner in order; a stretch without a hard stop has nothing to say and is left out. */
export function restartsOf(stint: readonly Driven[], stops: Stop[], { bite_K }: WindowLimits): Restart[] {
  return stretchesOf(stint).flatMap(({ after, laps }) => {
    const braked = stops.filter((stop) => laps.includes(stop.lap));
    const first = braked.find((stop) => stop.hard);
    if (!first) return [];
    const lap = laps[0]!;
    const warm = warmFrom(braked, bite_K);
    const warmStop = warm === null ? null : braked[warm]!;
    return {
      lap,
      after,
      firstStop_K: first.startFace_K,
      firstStopPlace: first.place,
      firstStopLap: first.lap,
      underBite_K: Math.max(0, bite_K - first.startFace_K),
      brakesToWarm: warm,
      lapsToWarm: warmStop && warmStop.lap - lap,
      warmLap: warmStop && warmStop.lap,
      warmPlace: warmStop && warmStop.place,
    };
  });
}

/** Place in the list of the stop from which the disc is warm, or null. */
function warmFrom(braked: Stop[], bite_K: number): number | null {
  const lastCold = braked.findLastIndex((stop) => stop.hard && stop.startFace_K < bite_K - COLD_EXCESS_K);
  const warm = braked.findIndex((stop, i) => i > lastCold && stop.hard && stop.startFace_K >= bite_K);
  return warm < 0 ? null : warm;
}

interface Stretch {
  after: Restart['after'];
  laps: number[];
}

/** Runs of laps at pace, and what each comes after. */
function stretchesOf(stint: readonly Driven[]): Stretch[] {
  const found: Stretch[] = [];
  let pending: Restart['after'] | null = 'start';
  let before: Driven['kind'] | null = null;
  for (const passage of stint) {
    if (passage.kind === 'safety') pending = 'safety car';
    else if (passage.kind === 'in') pending = 'stop';
    else if (passage.kind === 'stand') pending = before === null ? 'start' : 'stop';
    else {
      if (passage.kind === 'out' && before !== 'out') pending ??= 'stop';
      if (pending) found.push({ after: pending, laps: [] });
      found.at(-1)!.laps.push(passage.lap);
      pending = null;
    }
    // a car that stands before its first lap still starts there
    if (passage.kind !== 'stand' || before !== null) before = passage.kind;
  }
  return found;
}
