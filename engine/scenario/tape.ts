/** Blanking as it is made: whole strips of tape from one side of the mouth, or one panel of a set. Pure arithmetic of the mouth. */

/** A strip cannot be laid better than this [mm] */
const LAID_MM = 0.5;

/** How far a straight edge is from the side where it begins, against what it covers of the mouth. */
export interface Reach {
  readonly across_mm: number;
  pctAt(depth_mm: number): number;
  depthFor(pct: number): number;
}

/** What tape needs to know of a duct. */
export interface Tape {
  mouth_width_mm: number;
  mouth_height_mm?: number;
  blank_from?: 'outboard' | 'inboard' | 'top' | 'bottom' | undefined;
  strip_mm: number;
  /** How far a strip lies over the one before it. */
  strip_overlap_mm?: number | undefined;
  /** Of a mouth that is no rectangle; left out: what is covered is in proportion. */
  reach?: Reach;
}

/** A blanking that can be fitted, and how far it lies from the one asked for. */
interface Fit {
  pct: number;
  /** Fitted less asked [percentage points] */
  error_pct: number;
  /** The same across the mouth: from edge to edge [mm] */
  error_mm: number;
  /** Whether the two are the same as far as a hand can lay tape. */
  isExact: boolean;
}

export interface StripFit extends Fit {
  strips: number;
  /** Whether the last strip is cut at the mouth's edge. */
  isTrimmed: boolean;
}

export interface PanelFit extends Fit {
  letter: string;
}

const clamp = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));

/** What a straight edge covers of the mouth. */
export function reachOf({
  reach,
  blank_from,
  mouth_width_mm,
  mouth_height_mm = mouth_width_mm,
}: Mouth): Reach {
  if (reach) return reach;
  const across_mm = blank_from === 'top' || blank_from === 'bottom' ? mouth_height_mm : mouth_width_mm;
  return {
    across_mm,
    pctAt: (depth_mm) => (100 * depth_mm) / across_mm,
    depthFor: (pct) => (pct / 100) * across_mm,
  };
}

type Mouth = Omit<Tape, 'strip_mm' | 'strip_overlap_mm'>;

/** What strips cover across the mouth where it has no end [mm] */
const laid_mm = (strips: number, { strip_mm, strip_overlap_mm = 0 }: Tape): number =>
  strips === 0 ? 0 : strips * strip_mm - (strips - 1) * strip_overlap_mm;

/** How many strips it takes to come so far, a part of a strip included. */
const stripsTo = (depth_mm: number, { strip_mm, strip_overlap_mm = 0 }: Tape): number =>
  (depth_mm - strip_overlap_mm) / (strip_mm - strip_overlap_mm);

/** Strips side by side that cover the whole mouth; the last may be cut. */
export const stripsToClose = (tape: Tape): number =>
  Math.max(1, Math.ceil(stripsTo(reachOf(tape).across_mm - LAID_MM, tape)));

/** Share of the mouth under so many whole strips, the last cut at the mouth's edge [%] */
export const percentOfStrips = (strips: number, tape: Tape): number =>
  strips >= stripsToClose(tape) ? 100 : reachOf(tape).pctAt(laid_mm(strips, tape));

/** Share of the mouth under each number of whole strips, from none to all it takes [%] */
export const percentsOfStrips = (tape: Tape): number[] =>
  Array.from({ length: stripsToClose(tape) + 1 }, (_, strips) => percentOfStrips(strips, tape));

/** The number of whole strips that comes nearest to a blanking; of two as near, the more open. */
export function nearestStrips(blanking_pct: number, tape: Tape): StripFit {
  const { across_mm, depthFor } = reachOf(tape);
  const most = stripsToClose(tape);
  // the first strip lies over none, so what is narrower than an overlap is less than no strip by this reckoning
  const low = clamp(0, Math.floor(stripsTo(depthFor(blanking_pct), tape)), most);
  const high = Math.min(low + 1, most);
  const off = (strips: number): number => Math.abs(percentOfStrips(strips, tape) - blanking_pct);
  const strips = off(high) < off(low) - 1e-9 ? high : low;
  const isTrimmed = laid_mm(strips, tape) > across_mm + LAID_MM;
  return { strips, isTrimmed, ...fit(percentOfStrips(strips, tape), blanking_pct, tape) };
}

/** The blanking with one strip more or less: from between two counts, the next whole one on that side [%] */
export function stripStep(blanking_pct: number, direction: 1 | -1, tape: Tape): number {
  const { depthFor } = reachOf(tape);
  const now_mm = depthFor(blanking_pct);
  const beyond = percentsOfStrips(tape).filter((pct) => (depthFor(pct) - now_mm) * direction > LAID_MM);
  return (direction > 0 ? beyond[0] : beyond.at(-1)) ?? (direction > 0 ? 100 : 0);
}

/** Where strips end inside the blanked part, from the side where they begin [mm] */
export function stripEdges_mm(blanking_pct: number, tape: Tape): number[] {
  const blanked_mm = reachOf(tape).depthFor(blanking_pct);
  const inside = Math.max(0, Math.ceil(stripsTo(blanked_mm - LAID_MM, tape)) - 1);
  return Array.from({ length: inside }, (_, i) => laid_mm(i + 1, tape));
}

/** Letters of a set in their order. Eight at most: I, L and O, which are taken for figures, are never reached. */
const LETTERS = 'ABCDEFGH';

/** The letter of the panel at a place of the set. */
export const panelLetter = (place: number): string => LETTERS[place] ?? '';

/** What the panel of a letter covers, or null when the set has none of that letter [%] */
export const percentOfPanel = (letter: string, panels_pct: readonly number[]): number | null =>
  panels_pct.find((_, place) => letter !== '' && panelLetter(place) === letter) ?? null;

/** The panel of a set that comes nearest to a blanking, of two as near the more open; null for an empty set. */
export function nearestPanel(
  blanking_pct: number,
  panels_pct: readonly number[],
  mouth: Mouth,
): PanelFit | null {
  let best: PanelFit | null = null;
  for (const [place, pct] of panels_pct.entries()) {
    const found = { letter: panelLetter(place), ...fit(pct, blanking_pct, mouth) };
    if (!best || Math.abs(found.error_pct) < Math.abs(best.error_pct) - 1e-9) best = found;
  }
  return best;
}

function fit(pct: number, asked_pct: number, mouth: Mouth): Fit {
  const { depthFor } = reachOf(mouth);
  const error_mm = depthFor(pct) - depthFor(asked_pct);
  return { pct, error_pct: pct - asked_pct, error_mm, isExact: Math.abs(error_mm) <= LAID_MM };
}
