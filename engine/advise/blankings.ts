/** All blankings: how every lap of a corner does from a fully open mouth to a fully closed one. */
import type { Scenario } from '../scenario/schema.ts';
import type { CompileOptions } from '../stint/compile.ts';
import { judge, windowOf, type JudgedLap } from '../stint/judge.ts';
import type { Axle, CornerResult, Verdict, WindowLimits } from '../stint/result.ts';
import { looksAt, type Sight } from './look.ts';
import { together, type Outcome, type Search, type Steps } from './search.ts';

/** From one blanking to the next where no counted lap changes sides of a limit between them [percent] */
const COARSE_PCT = 5;

/** One lap at one blanking, by the judge's own rules. */
export interface BlankedLap extends Pick<
  JudgedLap,
  'lap' | 'in' | 'tooHot' | 'tooCold' | 'faceMax_K' | 'coldestStop_K'
> {
  /** From the lap to the nearest hot and cold limit; negative is past it, endless where no hard stop meets it [K] */
  hotMargin_K: number;
  coldMargin_K: number;
}

export interface BlankingRow {
  /** Covered share of the mouth from the start of the stint [percent] */
  blanking_pct: number;
  /** Over the counted laps. */
  verdict: Verdict;
  laps: BlankedLap[];
}

export interface BlankingMap {
  axle: Axle;
  side: CornerResult['side'];
  window: WindowLimits;
  /** From open to closed, every 5 %, and every whole percent between two where a counted lap begins or ends to be out. */
  rows: BlankingRow[];
}

/** A map for every corner that has a duct; what phases set holds as before. All blankings of all corners may run at once. */
export const blankings = (scenario: Scenario, options: CompileOptions = {}): Search<BlankingMap[]> => ({
  ground: { scenario, ...options },
  steps: together(looksAt(scenario).filter(hasDuct).map(mapOf)),
});

const hasDuct = ({ corner }: Sight): boolean => corner.brake.duct !== null;

function* mapOf({ corner, look }: Sight): Steps<BlankingMap> {
  function* rowAt(blanking_pct: number): Steps<BlankingRow> {
    return rowOf(blanking_pct, yield* look(blanking_pct));
  }
  const { axle, side, brake } = corner;
  const coarse = yield* together(percents(0, 100, COARSE_PCT).map(rowAt));
  const fine = yield* together(near(coarse).map(rowAt));
  const rows = [...coarse, ...fine].sort((a, b) => a.blanking_pct - b.blanking_pct);
  return { axle, side, window: windowOf(brake), rows };
}

const rowOf = (blanking_pct: number, { verdict, laps, window }: Outcome): BlankingRow => ({
  blanking_pct,
  verdict,
  laps: laps.map((lap) => {
    // a lap's own margins are those of a stint of this lap alone
    const { hotMargin_K, coldMargin_K } = judge([lap], window, 1);
    const { tooHot, tooCold, faceMax_K, coldestStop_K } = lap;
    return {
      lap: lap.lap,
      in: lap.in,
      tooHot,
      tooCold,
      faceMax_K,
      coldestStop_K,
      hotMargin_K,
      coldMargin_K,
    };
  }),
});

/** Whole percents between two rows of which a counted lap passes a limit in one alone. */
function near(rows: readonly BlankingRow[]): number[] {
  return rows.slice(1).flatMap((above, i) => {
    const below = rows[i]!;
    const passes = above.laps.some((lap, k) => lap.in !== null && isOtherwise(lap, below.laps[k]!));
    return passes ? percents(below.blanking_pct + 1, above.blanking_pct - 1, 1) : [];
  });
}

const isOtherwise = (a: BlankedLap, b: BlankedLap): boolean =>
  a.tooHot !== b.tooHot || a.tooCold !== b.tooCold;

const percents = (from: number, to: number, step: number): number[] =>
  Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => from + i * step);
