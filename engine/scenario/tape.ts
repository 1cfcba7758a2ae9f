/** Blanking as it is made: whole strips of tape from the outboard edge, or one panel of a set. Pure arithmetic of the mouth. */

/** A strip cannot be laid better than this [mm] */
const LAID_MM = 0.5;

export interface Tape {
  mouth_width_mm: number;
  strip_mm: number;
}

/** A blanking that can be fitted, and how far it lies from the one asked for. */
interface Fit {
  pct: number;
  /** Fitted less asked [percentage points] */
  error_pct: number;
  /** The same along the mouth [mm] */
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

const coveredBy = (strips: number, { mouth_width_mm, strip_mm }: Tape): number =>
  clamp(0, strips * strip_mm, mouth_width_mm);

/** Strips side by side that cover the whole mouth; the last may be cut. */
export const stripsToClose = ({ mouth_width_mm, strip_mm }: Tape): number =>
  Math.max(1, Math.ceil((mouth_width_mm - LAID_MM) / strip_mm));

/** Share of the mouth under so many whole strips, edge to edge, the last cut at the mouth's edge [%] */
export const percentOfStrips = (strips: number, tape: Tape): number =>
  strips >= stripsToClose(tape) ? 100 : (100 * coveredBy(strips, tape)) / tape.mouth_width_mm;

/** The number of whole strips that comes nearest to a blanking; of two as near, the more open. */
export function nearestStrips(blanking_pct: number, tape: Tape): StripFit {
  const below = Math.floor((blanking_pct / 100) * (tape.mouth_width_mm / tape.strip_mm));
  const most = stripsToClose(tape);
  const [low, high] = [clamp(0, below, most), clamp(0, below + 1, most)];
  const off = (strips: number): number => Math.abs(percentOfStrips(strips, tape) - blanking_pct);
  const strips = off(high) < off(low) - 1e-9 ? high : low;
  const isTrimmed = strips * tape.strip_mm > tape.mouth_width_mm + LAID_MM;
  return { strips, isTrimmed, ...fit(percentOfStrips(strips, tape), blanking_pct, tape.mouth_width_mm) };
}

/** The blanking with one strip more or less: from between two counts, the next whole one on that side [%] */
export function stripStep(blanking_pct: number, direction: 1 | -1, tape: Tape): number {
  const counts = Array.from({ length: stripsToClose(tape) + 1 }, (_, strips) =>
    percentOfStrips(strips, tape),
  );
  const laid_pct = (100 * LAID_MM) / tape.mouth_width_mm;
  const beyond = counts.filter((pct) => (pct - blanking_pct) * direction > laid_pct);
  return (direction > 0 ? beyond[0] : beyond.at(-1)) ?? (direction > 0 ? 100 : 0);
}

/** Where strips meet inside the blanked part, from the outboard edge [mm] */
export function stripEdges_mm(blanking_pct: number, { mouth_width_mm, strip_mm }: Tape): number[] {
  const blanked_mm = (mouth_width_mm * blanking_pct) / 100;
  const inside = Math.max(0, Math.ceil((blanked_mm - LAID_MM) / strip_mm) - 1);
  return Array.from({ length: inside }, (_, i) => (i + 1) * strip_mm);
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
  mouth_width_mm: number,
): PanelFit | null {
  let best: PanelFit | null = null;
  for (const [place, pct] of panels_pct.entries()) {
    const found = { letter: panelLetter(place), ...fit(pct, blanking_pct, mouth_width_mm) };
    if (!best || Math.abs(found.error_pct) < Math.abs(best.error_pct) - 1e-9) best = found;
  }
  return best;
}

function fit(pct: number, asked_pct: number, mouth_width_mm: number): Fit {
  const error_pct = pct - asked_pct;
  const error_mm = (error_pct / 100) * mouth_width_mm;
  return { pct, error_pct, error_mm, isExact: Math.abs(error_mm) <= LAID_MM };
}
