/** The safe span: which blankings keep a corner inside its window over the counted laps. */
import type { Axle, CornerResult, Limit } from '../stint/result.ts';
import type { CornerSpread, Count } from './doubt.ts';

/** What fails first just beyond one end of the span. */
export interface SpanBound {
  limit: Limit;
  lap: number;
  place: string;
}

/** How a corner does at one blanking. */
export interface Spare {
  blanking_pct: number;
  /** Index into the duct's panels; null where no panel covers just this. */
  panel: number | null;
  /** Smallest distance to the hot and to the cold limits; negative is past them [K] */
  hotMargin_K: number;
  coldMargin_K: number;
  /** What the draws make of it; null where none were made. */
  count: Count | null;
}

/** Something that would help where no blanking holds, and by how much it was computed to. */
export interface Remedy {
  /** Key of the scenario that is changed, and its value before and after. */
  key: string;
  from: number;
  to: number;
  /** Gain of the smaller margin, each at its own best blanking [K] */
  gain_K: number;
}

/** Why no blanking holds both limits. */
export interface NoSpan {
  /** Too hot even open, too cold even closed, or too cold wherever it is not too hot. */
  why: 'hot when open' | 'cold when closed' | 'swing';
  /** The limits that are nearest at the least bad blanking. */
  hotLimit: Limit;
  coldLimit: Limit;
  /** The least that must be closed not to be too cold, and the most that may be not to be too hot; null: none does. */
  warmFrom_pct: number | null;
  coolTo_pct: number | null;
  /** Face peak minus coldest counted stop at the least bad blanking, against the width of the window [K] */
  swing_K: number | null;
  width_K: number;
  remedies: Remedy[];
}

export interface Reach {
  /** Percent of the mouth; null where no blanking stays in, nothing is judged, or there is no duct. */
  span_pct: [low: number, high: number] | null;
  /** What bounds each end; null where the span goes on to fully open or fully closed. */
  low: SpanBound | null;
  high: SpanBound | null;
  /**
   * Of the blankings inside the span that with the largest smaller margin, at most 85 % where that holds; a whole percent
   * where the span has one. The least bad where there is no span.
   */
  best: Spare | null;
  /** What can be fitted inside the span; empty where there is none, or where no blank can be made for it. */
  candidates: Spare[];
  /** What to fit: the fittest of the candidates (`fittest.ts`), if there is one; the least bad blanking where there is no span. */
  proposal: Spare | null;
  /** The draws of what is proposed; null where none were made. */
  drawn: CornerSpread | null;
  none: NoSpan | null;
  /** Why nothing is said, in words; empty where something is. */
  reason: string;
}

/** Over all counted laps of one corner. */
export interface SafeSpan extends Reach {
  axle: Axle;
  side: CornerResult['side'];
  /** The first lap on which a phase has blanked the mouth anew; null where none does. */
  changesOn: number | null;
  /** Whether no lap counts before that: what is fitted first then decides nothing. */
  isIdle: boolean;
  /**
   * Where no blanking holds all of them and a phase changes the blanking: the lap on which it does, and what holds over the
   * counted laps before it.
   */
  before: (Reach & { lap: number }) | null;
}

/** Whether nothing that can be fitted keeps the corner in, so that one would want to know what else would help. */
export const isHelpless = ({ none, best, before }: SafeSpan): boolean =>
  none !== null && best !== null && !before;

/** The range that stays in on all corners that one blanking moves; null where there is none. */
export function spanTogether(spans: readonly SafeSpan[]): [low: number, high: number] | null {
  if (spans.length === 0) return null;
  const low = Math.max(...spans.map(({ span_pct }) => span_pct?.[0] ?? Infinity));
  const high = Math.min(...spans.map(({ span_pct }) => span_pct?.[1] ?? -Infinity));
  return low <= high ? [low, high] : null;
}

export const smallerMargin_K = ({ hotMargin_K, coldMargin_K }: Pick<Spare, 'hotMargin_K' | 'coldMargin_K'>) =>
  Math.min(hotMargin_K, coldMargin_K);
