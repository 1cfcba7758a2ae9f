/** An invented map of all blankings for tests of words and drawings; no number in it is physics. */
import type { BlankedLap, BlankingMap, BlankingRow, Verdict } from '../../engine/index.ts';

export interface MapOptions {
  laps?: number;
  /** The first laps do not count. */
  uncounted?: number;
  /** On a lap: closed more than the first of them is too hot, less than the second too cold [percent] */
  edges?: (lap: number) => readonly [hotFrom_pct: number, coldTo_pct: number];
  percents?: readonly number[];
}

const every5 = Array.from({ length: 21 }, (_, i) => 5 * i);

/** Margins grow by 2 K with every percent from the edges. */
export function sampleMap(options: MapOptions = {}): BlankingMap {
  const { laps = 6, uncounted = 2, edges = () => [66, 57] as const, percents = every5 } = options;
  const lapAt = (lap: number, pct: number): BlankedLap => {
    const [hotFrom, coldTo] = edges(lap);
    const [hotMargin_K, coldMargin_K] = [2 * (hotFrom - pct), 2 * (pct - coldTo)];
    const [tooHot, tooCold] = [hotMargin_K < 0, coldMargin_K < 0];
    return {
      lap,
      in: lap <= uncounted ? null : !tooHot && !tooCold,
      tooHot,
      tooCold,
      faceMax_K: 923 - hotMargin_K,
      coldestStop_K: 673 + coldMargin_K,
      hotMargin_K,
      coldMargin_K,
    };
  };
  const rows = percents.map((pct) =>
    rowOf(
      pct,
      Array.from({ length: laps }, (_, i) => lapAt(i + 1, pct)),
    ),
  );
  const window = { bite_K: 673, facePeak_K: 923, bulk_K: 900, run_K: null };
  return { axle: 'front', side: 'both', window, rows };
}

function rowOf(blanking_pct: number, laps: BlankedLap[]): BlankingRow {
  const counted = laps.filter((lap) => lap.in !== null);
  const hot = counted.some((lap) => lap.tooHot);
  const cold = counted.some((lap) => lap.tooCold);
  const verdict = {
    status: hot && cold ? 'both' : hot ? 'hot' : cold ? 'cold' : 'in',
    firstLapOut: counted.find((lap) => lap.in === false)?.lap ?? null,
    hotMargin_K: Math.min(...counted.map((lap) => lap.hotMargin_K)),
    coldMargin_K: Math.min(...counted.map((lap) => lap.coldMargin_K)),
  } as Verdict;
  return { blanking_pct, verdict, laps };
}
