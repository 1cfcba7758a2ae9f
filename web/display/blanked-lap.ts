/** One lap at any blanking, read out of the map of all blankings. */
import type { BlankedLap, BlankingMap } from '../../engine/index.ts';

/** A margin is at least this far on the side of its limit that the judge has put the lap [K] */
const SIDED_K = 0.5;

/** Margins whose signs are the verdict: a brief excess that is forgiven is no margin past the limit. */
export interface SidedMargins {
  hot_K: number;
  cold_K: number;
}

export const sided = ({ tooHot, tooCold, hotMargin_K, coldMargin_K }: BlankedLap): SidedMargins => ({
  hot_K: onSide(hotMargin_K, tooHot),
  cold_K: onSide(coldMargin_K, tooCold),
});

const onSide = (margin_K: number, isOut: boolean): number =>
  isOut ? Math.min(margin_K, -SIDED_K) : Math.max(margin_K, SIDED_K);

/** The lap at a place of the map's list; in proportion between the two blankings that were run. */
export function blankedLap({ rows }: BlankingMap, place: number, blanking_pct: number): BlankedLap | null {
  const above = rows.findIndex((row) => row.blanking_pct >= blanking_pct);
  const [low, high] = [rows[Math.max(0, above - 1)], rows[above]];
  const [a, b] = [low?.laps[place], high?.laps[place]];
  if (!low || !high || !a || !b) return null;
  if (high.blanking_pct === blanking_pct || low === high) return b;
  const share = (blanking_pct - low.blanking_pct) / (high.blanking_pct - low.blanking_pct);
  const [from, to] = [sided(a), sided(b)];
  const tooHot = mixed(from.hot_K, to.hot_K, share) < 0;
  const tooCold = mixed(from.cold_K, to.cold_K, share) < 0;
  return {
    lap: a.lap,
    in: a.in === null ? null : !tooHot && !tooCold,
    tooHot,
    tooCold,
    faceMax_K: mixed(a.faceMax_K, b.faceMax_K, share),
    coldestStop_K:
      a.coldestStop_K === null || b.coldestStop_K === null
        ? null
        : mixed(a.coldestStop_K, b.coldestStop_K, share),
    hotMargin_K: mixed(a.hotMargin_K, b.hotMargin_K, share),
    coldMargin_K: mixed(a.coldMargin_K, b.coldMargin_K, share),
  };
}

/** A margin to a limit that nothing meets is endless at both. */
const mixed = (from: number, to: number, share: number): number =>
  from === to ? from : from + share * (to - from);
