/** Results with a chosen verdict, for tests of words. */
import type { Axle, CornerResult, Lap, PhaseSpan, Pull, StintResult, Verdict } from '../../engine/index.ts';

const inside: Verdict = {
  status: 'in',
  reason: null,
  countedLaps: 15,
  firstLapOut: null,
  hotMargin_K: 43,
  hotLimit: 'face peak',
  hotPlace: 'turn 3',
  hotLap: 12,
  coldMargin_K: 99,
  coldLimit: 'bite',
  coldPlace: 'turn 1',
  coldLap: 5,
  facePeak_K: 880,
  coldestStop_K: 772,
  swing_K: 108,
};

const verdict = (changes: Partial<Verdict>): Verdict => ({ ...inside, ...changes });

export function corner(
  axle: Axle,
  changes: Partial<Verdict> = {},
  more: Partial<CornerResult> = {},
): CornerResult {
  const window = { bite_K: 673.15, facePeak_K: 923.15, bulk_K: 833.15, run_K: null };
  const peaks = { facePeak_K: verdict(changes).facePeak_K };
  return {
    axle,
    side: 'both',
    window,
    laps: [],
    stops: [],
    restarts: [],
    soak: null,
    stopSoaks: [],
    columns: null,
    verdict: verdict(changes),
    ...peaks,
    ...more,
  } as CornerResult;
}

export const resultOf = (...corners: CornerResult[]): StintResult =>
  ({ corners, pulls: [] as Pull[], laps: [] as Lap[], phases: [] as PhaseSpan[] }) as StintResult;
