/** What can be fitted inside a safe span. */
import { canBeMade } from '../duct/blank-keys.ts';
import type { Look } from './look.ts';
import { together, type Steps } from './search.ts';
import { smallerMargin_K, type Spare } from './span.ts';

/** Panels do if one of them keeps this share of the best margin. Ours: a crew fits what it has cut [-] */
const PANEL_KEEPS = 0.5;
/** What tape can be laid to without a rule. Ours [points] */
const TAPE_STEP_PCT = 5;

interface Inside {
  /** Between these; may be empty, the first then lies above the second [percent] */
  inner: readonly [number, number];
  best: Spare;
  panels: readonly number[];
  /** Less cannot be made, but for an open mouth [percent] */
  least_pct: number;
}

/** Each once: the panels inside; where none does, whole steps of tape and the best blanking as well. None only where nothing there can be made. */
export function* candidatesIn(
  look: Look,
  { inner: [low, high], best, panels, least_pct }: Inside,
): Steps<Spare[]> {
  const isInside = (pct: number): boolean => low <= pct && pct <= high;
  const isMade = (pct: number): boolean => canBeMade(pct, least_pct);
  const sparesAt = (all: readonly number[]): Steps<Spare[]> =>
    together(all.filter((pct) => isInside(pct) && isMade(pct)).map((pct) => spareAt(look, pct, panels)));
  const cut = yield* sparesAt([...new Set(panels)]);
  if (Math.max(...cut.map(smallerMargin_K)) >= PANEL_KEEPS * smallerMargin_K(best)) return cut;
  const laid = yield* sparesAt(STEPS_PCT.filter((pct) => !panels.includes(pct)));
  const others = [...cut, ...laid];
  const isAmong = others.some(({ blanking_pct }) => blanking_pct === best.blanking_pct);
  const isWanted =
    !isAmong && isMade(best.blanking_pct) && (isInside(best.blanking_pct) || others.length === 0);
  return isWanted ? [...others, best] : others;
}

const STEPS_PCT = Array.from({ length: 100 / TAPE_STEP_PCT + 1 }, (_, i) => i * TAPE_STEP_PCT);

export function* spareAt(look: Look, blanking_pct: number, panels_pct: readonly number[]): Steps<Spare> {
  const { hotMargin_K, coldMargin_K } = (yield* look(blanking_pct)).verdict;
  const panel = panels_pct.indexOf(blanking_pct);
  return { blanking_pct, panel: panel < 0 ? null : panel, hotMargin_K, coldMargin_K, count: null };
}
